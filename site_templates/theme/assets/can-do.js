// Holds what somebody says of a day against what each job of the table asks, and lists what is left. Rows
// are read by today.js's days; nothing is worked out here, kept or sent. What is not said rules out what
// asks for it, and nothing lifts a stop.
const SAID = { hours: "your hours", helpers: "your helpers", wind: "the wind", warm: "how warm it gets",
  night: "how cold the night is", frost: "how cold last night was", ground: "the ground", rain: "when rain comes" };

const numbers = (text) => text.split(" ").map(Number);

// Each thing that rules a job out, what forbids first and what can be changed last: whether it does, by what
// the job asks and what was said of the day.
const MEETS = {
  wind: (asks, said) => numbers(asks)[0] <= said && said <= numbers(asks)[1],
  warm: (asks, said) => said >= Number(asks),
  night: (asks, said) => said >= Number(asks),
  frost: (asks, said) => said <= Number(asks),
  ground: (asks, said) => asks.split(" ").includes(said),
  rain: (asks, said) => said >= Number(asks),
  helpers: (asks, said) => said >= Number(asks),
  hours: (asks, said) => said >= Number(asks),
};

// What rules a job out on a day, the first of all that do; nothing where it can be done.
const ruledOut = (asks, said, day) => {
  if ("stop" in asks) return { by: "stop" };
  if ("out" in asks && day <= asks.out) return { by: "out" };
  if ("asks" in asks) return { by: "asks" };
  for (const [by, meets] of Object.entries(MEETS)) {
    if (!(by in asks)) continue;
    const told = said[by];
    if (told === undefined || told === "") return { by, unsaid: true };
    if (!meets(asks[by], by === "ground" ? told : Number(told))) return { by };
  }
  return null;
};

// What a row says under a name, or what all rows of its kind of work say above it.
const partOf = (row, name) =>
  (row.querySelector(`[data-part="${name}"]`) ??
    row.parentElement.querySelector(`.group [data-part="${name}"]`))
    ?.textContent.replace(/\s+/g, " ").trim() ?? "";

const sentence = (words) =>
  words && words[0].toUpperCase() + words.slice(1) + (/[.?!]$/.test(words) ? "" : ".");

const BEFORE = { stop: "Stop: ", out: "", asks: "Waits for an answer: ", hours: "it takes ", helpers: "not alone: " };

const reason = (row, { by, unsaid }) =>
  (unsaid ? `Say ${SAID[by]} first. ` : "") + sentence((BEFORE[by] ?? "it asks for ") + partOf(row, by));

const made = (tag, words, kind) => {
  const element = document.createElement(tag);
  element.textContent = words;
  if (kind) element.className = kind;
  return element;
};

// Rows in groups of what is alike in them, in the order they come.
const groupsOf = (rows, alike) => {
  const groups = new Map();
  for (const row of rows) groups.set(alike(row), [...(groups.get(alike(row)) ?? []), row]);
  return [...groups.values()];
};

const named = (row, words) => {
  const link = row.querySelector("a").cloneNode();
  link.append(words);
  return link;
};

// Jobs of one step: of one thing its sheet is named by both, of several each thing leads to its own.
const jobsOfStep = (rows) => {
  const step = partOf(rows[0], "step");
  if (rows.length === 1) return [named(rows[0], made("strong", `${step}: ${partOf(rows[0], "place")}`))];
  // a comma stays on the line of the name before it
  const links = rows.flatMap((row, turn) => [turn ? "\u2060, " : " ", named(row, partOf(row, "place"))]);
  return [made("strong", `${step}:`), ...links];
};

// A line for the jobs of one step of which the same is said.
const lines = (list, rows, told) => {
  const alike = (row) => [partOf(row, "step"), ...told(row)].join("\n");
  list.replaceChildren(...groupsOf(rows, alike).map((same) => {
    const item = made("li", "");
    const [short, long] = told(same[0]);
    item.append(...jobsOfStep(same));
    if (short) item.append(" ", made("span", short, "told"));
    if (long) item.append(" ", made("span", long, "where"));
    return item;
  }));
};

// Of a job that can be done: how long it is open, how long it takes, what it takes and what to mind.
const doable = (row, day) => {
  const takes = partOf(row, "takes");
  const mind = ["fire", "care", "wind", "helpers"].map((name) => partOf(row, name));
  return [
    [left(daysBetween(day, openUntil(row, day))), partOf(row, "hours")].filter(Boolean).join(", "),
    [takes && `takes ${takes}`, ...mind].filter(Boolean).map(sentence).join(" "),
  ];
};

// Of jobs that can be done, those on one walk and those that one mix does.
const together = (list, rows) => {
  const onWalk = (row) => [...row.querySelectorAll("[data-walk]")].map((walk) => [walk.textContent, row]);
  const ofMix = (row) => [[`One mix ${row.dataset.load}`, row]];
  const pairs = [...rows.flatMap(onWalk), ...rows.filter((row) => row.dataset.load).flatMap(ofMix)];
  const shared = groupsOf(pairs, ([key]) => key).filter((pair) => pair.length > 1);
  list.replaceChildren(...shared.map((pair) => {
    const [key, first] = pair[0];
    const steps = groupsOf(pair.map(([, row]) => row), (row) => partOf(row, "step"));
    const item = made("li", "");
    item.append(
      made("strong", key.startsWith("One mix ") ? `One mix of ${partOf(first, "takes")}` : key),
      `: ${steps.map((rows) => `${partOf(rows[0], "step")}: ${rows.map((row) => partOf(row, "place")).join(", ")}`).join("; ")}.`,
    );
    return item;
  }));
  return shared.length > 0;
};

const saidOf = (box) =>
  Object.fromEntries([...box.querySelectorAll("[name]")].map((one) => [one.name, one.value.trim()]));

const inOneLine = (box) =>
  [...box.querySelectorAll("[name]")]
    .filter((one) => one.value !== "")
    .map((one) => `${one.labels[0].textContent.trim()}: ${one.selectedOptions?.[0].textContent ?? one.value}`)
    .join("; ");

const openUntil = (row, day) => holds(spansOf(row), day)?.[1];

const answer = (box, table, day) => {
  const said = saidOf(box);
  const open = [...table.querySelectorAll("tr[data-days]")]
    .filter((row) => openUntil(row, day))
    .sort((one, other) => (openUntil(one, day) < openUntil(other, day) ? -1 : 1));
  const out = new Map(open.map((row) => [row, ruledOut(row.dataset, said, day)]));
  const can = open.filter((row) => !out.get(row));
  const [done, shared, not] = document.querySelectorAll(".answers > ul");
  lines(done, can, (row) => doable(row, day));
  lines(not, open.filter((row) => out.get(row)), (row) => ["", reason(row, out.get(row))]);
  document.querySelector(".answers .with").hidden = !together(shared, can);
  document.querySelector(".answers .without").hidden = can.length === open.length;
  document.querySelector(".answers .counted").textContent = open.length
    ? `${inWords(day)}: ${can.length} of ${open.length} jobs that are open today can be done on such a day.`
    : `${inWords(day)}: no job is open today.`;
  document.querySelector(".answers .picked").textContent = inOneLine(box);
};

const canDo = () => {
  const box = document.querySelector(".day-is");
  if (!box) return;
  const day = isoDay(new Date());
  const table = document.querySelector(".asked-of-days");
  const early = day < table.dataset.asOf;
  document.querySelector(".answers .before").hidden = !early;
  document.querySelector(".answers").hidden = false;
  if (early) return;
  box.hidden = false;
  table.open = false;
  document.querySelector(".answers").classList.add("given");
  box.addEventListener("input", () => answer(box, table, day));
  answer(box, table, day);
};
addEventListener("DOMContentLoaded", canDo);
addEventListener("turned", canDo); // where one file holds all pages, and shows another
