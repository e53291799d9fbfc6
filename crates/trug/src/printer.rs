//! Pages as PDF for the app, as this program serves it: an outing in, a file out, and nothing kept.

use crate::world::Knowledge;
use app::PdfOrder;
use desk::{InputFile, device, sheets, usual_paper};
use ground::{Fault, Faults, Place};
use page::{Catalogue, Words, pages};
use pdf::Press;

/// What it takes to answer the app.
pub(crate) struct Printer {
    knowledge: Knowledge,
    catalogue: Catalogue,
    press: Press,
}

impl Printer {
    /// A printer that knows what the app knows: the herbal of the project.
    pub(crate) fn new() -> Result<Self, Faults> {
        let knowledge = Knowledge::with(None)?;
        Ok(Self { knowledge, catalogue: Catalogue::english(), press: Press::new()? })
    }

    /// The page that is ordered, or in words why there is none.
    pub(crate) fn print(&self, order: &[u8]) -> Result<Vec<u8>, String> {
        self.printed(order).map_err(|faults| self.catalogue.faults(&faults))
    }

    fn printed(&self, order: &[u8]) -> Result<Vec<u8>, Faults> {
        let PdfOrder { page: name, now, file, habits } = serde_json::from_slice(order)
            .map_err(|error| Fault::new("app-no-message", Place::default(), error.to_string()))?;
        let file = InputFile::from_bytes(&file.name, file.text.into_bytes())?;
        let mut world = self.knowledge.world();
        world.now = now;
        let reply =
            device::answer(&world, device::Request::Plan { files: vec![file], reasons: false })?;
        let unknown = || Fault::new("app-no-message", Place::default(), name.as_str());
        let device::Reply::Plan(plan) = reply else { return Err(unknown().into()) };
        let catalogue = self.catalogue.with_habits(habits);
        let words = Words::new(&catalogue).with_herbal(world.herbal());
        let paper = usual_paper(plan.head.region);
        let all = pages(&plan, &sheets(&world, &plan), paper, &words);
        let wanted = all.into_iter().find(|page| page.name == name).ok_or_else(unknown)?;
        Ok(self.press.print(&wanted.page, paper, plan.head.as_of)?)
    }
}
