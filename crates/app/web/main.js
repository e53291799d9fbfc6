// The page: links and forms go to the worker, screens come back. It knows nothing of plants.

import { worker } from "./start.js";

const main = document.getElementById("main");

let asked = 0;
const waiting = new Map();
worker.onmessage = ({ data }) => {
  waiting.get(data.id)?.(data);
  waiting.delete(data.id);
};

function ask(visit) {
  return new Promise((answered) => {
    asked += 1;
    waiting.set(asked, answered);
    worker.postMessage({ id: asked, habits: habits(), ...visit });
  });
}

// How amounts and dates are to be said; what is not chosen is left to the program.
const choices = ["measures", "dates"].map((id) => document.getElementById(id));
const habits = () => Object.fromEntries(choices.filter(({ value }) => value).map(({ id, value }) => [id, value]));

// ---- moving about ----------------------------------------------------------------------------

const address = () => (location.hash.startsWith("#/") ? location.hash.slice(1) : "/");

// Screens are asked for one after the other; only the answer to the last is shown.
let latest = 0;
// Whether somebody has filled something in that no screen by its address has.
let filled = false;
let holding;

async function show(to, { said, back } = {}) {
  latest += 1;
  const mine = latest;
  const slow = setTimeout(() => main.setAttribute("aria-busy", "true"), 100);
  const began = performance.now();
  const { shown, failed, holds, took } = await ask({ to, ...said });
  performance.clearMeasures("answer");
  performance.measure("answer", { start: began, detail: took });
  clearTimeout(slow);
  if (mine !== latest) return;
  main.removeAttribute("aria-busy");
  filled = Boolean(said);
  if (failed) return said ? warn(failed) : tell(failed);
  const hash = `#${shown.at}`;
  if (location.hash !== hash) history[said ? "pushState" : "replaceState"](null, "", hash);
  document.title = shown.title;
  main.innerHTML = shown.main;
  if (shown.file) handOut(shown.file);
  if (shown.pdf) askForPdf(shown.pdf, mine);
  if (holds) holding ??= hold();
  if (back === undefined) {
    scrollTo(0, 0);
    const first = [".warned", "[autofocus]", "h1"].map((css) => main.querySelector(css));
    first.find(Boolean)?.focus({ preventScroll: true });
  } else {
    scrollTo(0, back);
  }
}

// Only the program that serves the app makes PDFs: nobody else is asked.
async function askForPdf(order, mine) {
  main.setAttribute("aria-busy", "true");
  const said = { method: "POST", body: JSON.stringify(order), headers: { "Content-Type": "application/json" } };
  const answer = await fetch("pdf", said).catch(() => undefined);
  const made = answer?.ok ? await answer.blob() : undefined;
  const refused = answer?.status === 422 ? await answer.text() : undefined;
  if (made) handOut({ name: `${order.page}.pdf`, text: made });
  if (mine !== latest) return;
  main.removeAttribute("aria-busy");
  if (!made) warn("no-pdf", refused);
}

// What was not done is said above the screen, which stays as it was filled in.
function warn(name, why) {
  main.querySelector(".warned")?.remove();
  const warned = document.createElement("div");
  warned.className = "warned";
  warned.append(document.getElementById(name).content.cloneNode(true));
  if (why) warned.querySelector("p").textContent = why;
  main.prepend(warned);
  warned.querySelector("h1, h2")?.focus();
}

function handOut({ name, text }) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text]));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

function tell(name) {
  main.replaceChildren(document.getElementById(name).content.cloneNode(true));
  main.querySelector("h1")?.focus();
}

function lead(to) {
  history.replaceState({ scroll: scrollY }, "");
  history.pushState(null, "", `#${to}`);
  show(to);
}

addEventListener("popstate", ({ state }) => show(address(), { back: state?.scroll ?? 0 }));

addEventListener("click", (event) => {
  if (event.target.closest?.("button.print")) return print();
  const measure = event.target.closest?.("[data-mm]");
  if (measure) return setRuler(Number(measure.dataset.mm));
  const starter = event.target.closest?.("[data-minutes]");
  if (starter) return startClock(starter.dataset);
  const stepper = event.target.closest?.("[data-step]");
  if (stepper) return step(stepper.dataset);
  const link = event.target.closest?.("a[href^='#']");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  const to = link.getAttribute("href").slice(1);
  if (to.startsWith("/")) lead(to);
  else open(to);
});

main.addEventListener("input", () => (filled = true));

// A button that counts: never below nothing.
function step({ of, step }) {
  filled = true;
  const field = document.getElementById(of);
  field.value = Math.max(0, (Number.parseInt(field.value, 10) || 0) + Number(step));
}

// What opens on demand is asked for once it is opened.
async function fill(details) {
  const place = details.querySelector(".opened");
  const { shown } = await ask({ to: address(), opens: place.id });
  if (!shown) return;
  place.innerHTML = shown.main;
  delete details.dataset.later;
}

const empty = "details[data-later]";
addEventListener("toggle", ({ target }) => target.open && target.matches?.(empty) && fill(target), true);

// A place on this screen: what it lies in is opened, and it takes the focus.
async function open(id) {
  const place = document.getElementById(id);
  if (!place) return;
  const later = place.closest(empty);
  if (later) await fill(later);
  for (let around = place; around; around = around.parentElement) {
    if (around.localName === "details") around.open = true;
  }
  place.tabIndex = -1;
  place.focus();
  place.scrollIntoView();
}

// Bytes as they are: whether they are text is for the program to say.
const base64 = (file) =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result.slice(reader.result.indexOf(",") + 1));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(file);
  });

addEventListener("submit", async (event) => {
  const form = event.target;
  event.preventDefault();
  const to = form.getAttribute("action").slice(1);
  const said = { form: [], files: [] };
  for (const [name, value] of new FormData(form, event.submitter)) {
    if (typeof value === "string") said.form.push([name, value]);
    else if (value.name) said.files.push({ name: value.name, base64: await base64(value) });
  }
  if (form.method === "get") lead(`${to}?${new URLSearchParams(said.form)}`.replaceAll("+", "%20"));
  else show(to, { said });
});

// ---- clocks ----------------------------------------------------------------------------------

// They run on from screen to screen, and over a reload; no timer ticks while there is none.
const clocks = document.getElementById("clocks");
let running = JSON.parse(localStorage.getItem("clocks") ?? "[]");
let ticking;

function startClock({ clock, minutes }) {
  running.push({ name: clock, until: Date.now() + minutes * 60_000 });
  draw();
}

function draw() {
  localStorage.setItem("clocks", JSON.stringify(running));
  clocks.hidden = running.length === 0;
  clocks.replaceChildren(
    ...running.map((clock) => {
      const item = document.getElementById("clock").content.cloneNode(true).firstElementChild;
      item.querySelector(".name").textContent = clock.name;
      item.querySelector("button").addEventListener("click", () => {
        running = running.filter((other) => other !== clock);
        draw();
      });
      return item;
    }),
  );
  clearInterval(ticking);
  if (running.length > 0) ticking = setInterval(tick, 1000);
  tick();
}

function tick() {
  running.forEach(({ until }, at) => {
    const left = clocks.children[at].querySelector(".left");
    const seconds = Math.ceil((until - Date.now()) / 1000);
    const says = seconds > 0 ? `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}` : left.dataset.up;
    // What a reader of the screen is told is only that the time is up.
    left.ariaLive = seconds > 0 ? "off" : "assertive";
    if (left.textContent === says) return;
    left.textContent = says;
    if (seconds === 0) navigator.vibrate?.([300, 200, 300]);
  });
  if (running.every(({ until }) => until <= Date.now())) clearInterval(ticking);
}

draw();

// ---- the ruler -------------------------------------------------------------------------------

// Pixels to a millimetre: what style sheets call one (CSS Values and Units, 6.2) is none on most screens,
// so the ruler is hidden until somebody held a card against it.
let pixels = Number(localStorage.getItem("pixels-in-mm")) || 96 / 25.4;

function setRuler(change) {
  pixels *= 1 + change;
  if (change === 0) localStorage.setItem("pixels-in-mm", pixels);
  measured();
}

function measured() {
  const { style, dataset } = document.documentElement;
  style.setProperty("--mm", `${pixels}px`);
  if (localStorage.getItem("pixels-in-mm")) dataset.measured = "";
}

measured();

// ---- how it looks ----------------------------------------------------------------------------

const dress = ({ id, value }) => (document.documentElement.dataset[id] = value);

// What was filled in would be lost: such a screen is said as it was until the next.
function resay() {
  if (!filled) show(address(), { back: scrollY });
}

const chosen = { looks: dress, hand: dress, measures: resay, dates: resay };
for (const [id, changed] of Object.entries(chosen)) {
  const choice = document.getElementById(id);
  choice.value = localStorage.getItem(id) ?? "";
  choice.addEventListener("change", () => {
    localStorage.setItem(id, choice.value);
    changed(choice);
  });
  if (changed === dress) dress(choice);
}

// ---- without a network -----------------------------------------------------------------------

// A newer version waits until somebody asks for it: never in the middle of an outing.
async function keep() {
  const keeper = navigator.serviceWorker;
  if (!isSecureContext || !keeper) {
    document.getElementById("not-kept").hidden = false;
    return;
  }
  const newer = document.getElementById("newer");
  // The first keeper of all is no newer one.
  const before = keeper.controller;
  let asked = false;
  // Where another window changed to the newer version, this one goes on until it is asked for here, too.
  keeper.addEventListener("controllerchange", () => {
    if (asked) location.reload();
    else if (before) newer.hidden = false;
  });
  const kept = await keeper.register("sw.js");
  const offer = () => {
    if (kept.waiting && keeper.controller) newer.hidden = false;
  };
  // It may have come before there was anybody to hear of it.
  const watch = () => kept.installing?.addEventListener("statechange", offer);
  offer();
  watch();
  kept.addEventListener("updatefound", watch);
  document.getElementById("renew").addEventListener("click", () => {
    asked = true;
    if (kept.waiting) kept.waiting.postMessage("take over");
    else location.reload();
  });
}

// Whether the browser may throw away what is kept when the device is full: asked once there is
// something to lose, and its answer is shown.
async function hold() {
  if (!navigator.storage?.persist) return;
  const held = (await navigator.storage.persisted()) || (await navigator.storage.persist());
  document.getElementById(held ? "held" : "not-held").hidden = false;
  document.getElementById(held ? "not-held" : "held").hidden = true;
}

// Who comes for the first time sees the app before its files are kept; who comes again may hear of a newer
// version even where this one does not start.
const first = show(address());
if (navigator.serviceWorker?.controller) keep();
else first.then(keep);
