//! What a school's own files change, and what they leave.

use crate::small::{NETTLE, files, herbal, one, said};
use ground::{Harm, LifeForm, Standing};
use herbal::{Account, Herbal, TextFile};
use identify::{RelativesStatement, Value};

const PATH: &str = "species/urtica-dioica.toml";

fn over(text: &str) -> Herbal {
    herbal().overlay(&one(PATH, text)).unwrap()
}

#[test]
fn an_empty_overlay_changes_nothing() {
    let base = herbal();
    let over = over("name = \"Urtica dioica\"\n");
    assert_eq!(over.flora, base.flora);
    assert_eq!(base.overlay(&[]).unwrap().flora, base.flora);
}

#[test]
fn a_whole_file_laid_over_itself_changes_nothing() {
    assert_eq!(over(NETTLE).flora, herbal().flora);
}

#[test]
fn cells_are_replaced_one_by_one() {
    let over = over(
        "name = \"Urtica dioica\"\n[characters]\nleaf_length_mm = { range = [50, 120], src = [\"flora\"] }\n",
    );
    let base = herbal();
    let (new, old) = (over.flora.sheet("Urtica dioica"), base.flora.sheet("Urtica dioica"));
    let (new, old) = (new.unwrap(), old.unwrap());
    let length = &new.characters["leaf_length_mm"];
    let range = Value::Range { ordinary: (50.0, 120.0), extreme: None };
    assert_eq!((&length.value, length.standing), (&range, Standing::Published));
    assert_eq!(new.characters["leaf_margin"], old.characters["leaf_margin"]);
    assert_eq!(new.harm, old.harm);
}

#[test]
fn what_is_known_of_relatives_is_replaced_whole_and_can_rest_on_a_source_of_ones_own() {
    let mut files = one(
        PATH,
        "name = \"Urtica dioica\"\n[relatives]\nstatement = \"all-listed\"\nregions = [\"europe\"]\nnote = \"Keyed out here.\"\nsrc = [\"county\"]\n",
    );
    files.push(TextFile {
        path: "sources/mine.toml".to_owned(),
        text: "[[source]]\nid = \"county\"\ntitle = \"Flora of the county\"\nauthor = \"A. Botanist\"\naddress = \"https://example.org/county\"\nkind = \"flora\"\n".to_owned(),
    });
    let over = herbal().overlay(&files).unwrap();
    let taxon = over.flora.sheet("Urtica dioica").unwrap().taxon();
    assert_eq!(taxon.relatives.statement, RelativesStatement::AllListed);
    assert_eq!(taxon.relatives.standing, Standing::Published);
}

#[test]
fn a_look_alike_that_the_overlay_does_not_name_stays() {
    let over = over(
        "name = \"Urtica dioica\"\n[[look_alike]]\nname = \"Lamium album\"\nwhy = \"leaf\"\ntells = []\nsays = \"no sting\"\nsrc = [\"flora\"]\n",
    );
    let sheet = over.flora.sheet("Urtica dioica").unwrap();
    let names: Vec<_> = sheet.look_alikes.keys().map(String::as_str).collect();
    assert_eq!(names, ["Conium maculatum", "Lamium album"]);
}

#[test]
fn a_new_species_must_be_complete() {
    let text = "name = \"Lamium album\"\nharm = \"none\"\nharm_note = \"Eaten.\"\nharm_src = [\"flora\"]\n";
    let all = herbal().overlay(&one("species/lamium-album.toml", text)).unwrap_err();
    let missing: Vec<_> = all.iter().map(|fault| fault.got.as_str()).collect();
    assert!(all.iter().all(|fault| fault.code == "missing-field"), "{all}");
    assert!(missing.contains(&"relatives") && missing.contains(&"life_form"), "{all}");
}

#[test]
fn a_new_species_and_a_new_state_come_in() {
    let text = NETTLE.replace("Urtica dioica", "Urtica urens").replace("\"serrate\"", "\"cut\"");
    let mut files = one("species/urtica-urens.toml", &text);
    let glossary = crate::small::GLOSSARY.split("[[character]]").nth(1).unwrap();
    let (character, _) = glossary.split_once("[[character.state]]").unwrap();
    files.push(TextFile {
        path: "glossary/mine.toml".to_owned(),
        text: format!(
            "[[character]]{character}[[character.state]]\nid = \"cut\"\nsays = \"cut\"\n"
        ),
    });
    let over = herbal().overlay(&files).unwrap();
    assert_eq!(over.flora.sheet("Urtica urens").unwrap().life_form, LifeForm::Perennial);
    assert_eq!(over.flora.sheets().count(), 3);
    let states = over.flora.glossary.states("leaf_margin");
    let states: Vec<_> = states.iter().map(|state| state.id.as_str()).collect();
    assert_eq!(states, ["cut", "entire", "serrate", "toothed"]);
}

#[test]
fn a_source_that_facts_lean_on_cannot_be_replaced() {
    let text = "[[source]]\nid = \"digest\"\ntitle = \"Mine\"\nauthor = \"Me\"\naddress = \"https://example.org\"\nkind = \"flora\"\n";
    let all = herbal().overlay(&one("sources/mine.toml", text)).unwrap_err();
    let (_, line, column, code, got) = said(all.iter().next().unwrap());
    assert_eq!((line, column, code.as_str(), got.as_str()), (2, 6, "source-twice", "digest"));
}

#[test]
fn harm_comes_with_its_note_and_source() {
    let all =
        herbal().overlay(&one(PATH, "name = \"Urtica dioica\"\nharm = \"none\"\n")).unwrap_err();
    let codes: Vec<_> = all.iter().map(|fault| fault.code.as_str()).collect();
    assert_eq!(codes, ["missing-field", "no-source"]);
    let over = over(
        "name = \"Urtica dioica\"\nharm = \"harmful\"\nharm_note = \"Ours.\"\nharm_src = [\"policy\"]\n",
    );
    let harm = &over.flora.sheet("Urtica dioica").unwrap().harm;
    assert_eq!((harm.value, harm.from.standing), (Harm::Harmful, Standing::Policy));
}

#[test]
fn places_say_which_file_a_row_now_stands_in() {
    let (base, before) = Herbal::read_with_account(&files()).unwrap();
    let mine = [TextFile {
        path: PATH.to_owned(),
        text: "name = \"Urtica dioica\"\n\n[characters]\nleaf_margin = { always = [\"entire\"], src = [\"flora\"] }\n".to_owned(),
    }];
    let (_, after) = base.overlay_with_account(&mine, &before).unwrap();
    let line = |account: &Account, field| account.places.at("species", "Urtica dioica", field).line;
    assert_eq!(line(&before, "leaf_margin"), Some(20));
    assert_eq!(line(&after, "leaf_margin"), Some(4));
    assert_eq!(line(&after, "leaf_length_mm"), Some(21));
}

#[test]
fn laying_the_same_files_over_twice_is_laying_them_over_once() {
    let changed = NETTLE
        .replace("[3, 11]", "[4, 10]")
        .replace("\"serrate\"", "\"entire\"")
        .replace("kept = \"not eaten\"", "kept = \"eaten\"");
    let once = over(&changed);
    let twice = once.overlay(&one(PATH, &changed)).unwrap();
    assert_ne!(once.flora, herbal().flora);
    assert_eq!(twice.flora, once.flora);
}

#[test]
fn part_rows_of_a_species_are_replaced_whole_and_those_of_others_stay() {
    let row = |part: &str| {
        format!(
            "\n[[part]]\npart = \"{part}\"\nharm = \"none\"\nroute = \"mouth\"\nforms = [\"cooked\"]\n\
             use = \"food\"\nsrc = [\"flora\"]\n"
        )
    };
    let mut whole = files();
    whole[2].text.push_str(&(row("leaf") + &row("seed")));
    whole[3].text.push_str(&row("root"));
    let base = Herbal::read(&whole).unwrap();
    let parts = |text: &str| {
        let over = base.overlay(&one(PATH, &format!("name = \"Urtica dioica\"\n{text}"))).unwrap();
        let rows = over.uses.table.parts.into_iter();
        rows.map(|row| format!("{} {}", row.taxon, row.part)).collect::<Vec<_>>()
    };
    let (hemlock, leaf, seed) =
        ("Conium maculatum root", "Urtica dioica leaf", "Urtica dioica seed");
    assert_eq!(parts(""), [hemlock, leaf, seed]);
    assert_eq!(parts(&row("root")), [hemlock, "Urtica dioica root"]);
}
