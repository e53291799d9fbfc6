// Runs in the page, after the checker: what is asked of every screen.

const ALL = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
const COLOURS = ["color-contrast", "color-contrast-enhanced"];

window.dressed = (value) => {
  const looks = document.getElementById("looks");
  looks.value = value;
  looks.dispatchEvent(new Event("change", { bubbles: true }));
};

// By day every rule; other looks differ in their colours alone.
window.checked = async (looks) => {
  // The way past the header lies over it while it has the focus, and only then.
  document.activeElement?.blur();
  const rules = { "color-contrast-enhanced": { enabled: true }, "target-size": { enabled: true } };
  const options = looks
    ? { runOnly: { type: "rule", values: COLOURS } }
    : { runOnly: { type: "tag", values: ALL }, rules };
  const { violations, passes } = await axe.run(document, options);
  if (!passes.length) return ["the checker passed nothing"];
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(" ")}`));
};

window.sideways = () => {
  const { scrollWidth } = document.documentElement;
  return scrollWidth > innerWidth ? [`${scrollWidth} px wide`] : [];
};

const CONTROLS = "a[href], button, input, select, textarea, summary";
const name = (control) => `${control.localName} ${control.id || control.innerText || control.name}`;

// Of a group of radio buttons the keys reach one; the others are reached from it by arrows.
function controls() {
  const seen = [...document.querySelectorAll(CONTROLS)].filter((one) => one.checkVisibility());
  const groups = new Set();
  return seen.filter((one) => {
    if (one.type !== "radio") return true;
    const first = !groups.has(one.name);
    groups.add(one.name);
    return first;
  });
}

// WCAG 2.2, 2.5.8: a link within a sentence is as high as the line. So is one that names a published source;
// the checker holds those to the criterion itself.
function inText(control) {
  if (control.localName !== "a" || getComputedStyle(control).display !== "inline") return false;
  if (control.origin !== location.origin) return true;
  const block = control.closest("p, li, td, th, dd, figcaption");
  return block && block.innerText.trim().length > control.innerText.trim().length;
}

function small(control) {
  const { width, height } = (control.closest("label") ?? control).getBoundingClientRect();
  return !inText(control) && (height < 47.5 || width < 24) && `${name(control)}: ${width} × ${height} px`;
}

let reached = new Set();
let wanted = [];
addEventListener("focusin", ({ target }) => reached.add(target.type === "radio" ? target.name : target));

window.listen = () => {
  wanted = controls();
  reached = new Set();
  document.activeElement?.blur();
  getSelection().collapse(document.body, 0);
  return wanted.length;
};

window.missed = () => {
  const lost = wanted.filter((one) => !reached.has(one.type === "radio" ? one.name : one));
  return [
    ...lost.map((one) => `not reached by keys: ${name(one)}`),
    ...wanted.map(small).filter(Boolean).map((one) => `small: ${one}`),
  ];
};

// Opens whatever opens on demand, and waits for what is asked for only then.
globalThis.opened = async () => {
  for (const details of document.querySelectorAll("details")) details.open = true;
  while (document.querySelector("main details[data-later]")) await new Promise((done) => setTimeout(done, 10));
};
