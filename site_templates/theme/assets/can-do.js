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

const wordsOf = (element) => element?.textContent.replace(/\s+/g, " ").trim() ?? "";

// What is said of a job: its own, what its row says, what all rows of its kind of work say above it.
const partOf = ({ row }, name) =>
  wordsOf(row.querySelector(`[data-part="${name}"]`) ??
    row.parentElement.querySelector(`.group [data-part="${name}"]`));

const hoursOf = ({ own }) => wordsOf(own.querySelector("b"));

// The hours of a day in which somebody hunts where it is done.
const awayOn = ({ own }, day) => [...own.querySelectorAll(`[data-away="${day}"]`)].map(wordsOf);

const placeOf = ({ own }) => wordsOf(own.querySelector("a"));

const sentence = (words) =>
  words && words[0].toUpperCase() + words.slice(1) + (/[.?!]$/.test(words) ? "" : ".");

const BEFORE = { stop: "Stop: ", out: "", asks: "Waits for an answer: ", hours: "it takes ", helpers: "not alone: " };

const reason = (job, { by, unsaid }) =>
  (unsaid ? `Say ${SAID[by]} first. ` : "") +
  sentence((BEFORE[by] ?? "it asks for ") + (by === "hours" ? hoursOf(job) : partOf(job, by)));

const made = (tag, words, kind) => {
  const element = document.createElement(tag);
  element.textContent = words;
  if (kind) element.className = kind;
  return element;
};

// Jobs in groups of what is alike in them, in the order they come.
const groupsOf = (jobs, alike) => {
  const groups = new Map();
  for (const job of jobs) groups.set(alike(job), [...(groups.get(alike(job)) ?? []), job]);
  return [...groups.values()];
};

const named = ({ own }, words) => {
  const link = own.querySelector("a").cloneNode();
  link.append(words);
  return link;
};

// Jobs of one step: of one thing its sheet is named by both, of several each thing leads to its own.
const jobsOfStep = (jobs) => {
  const step = partOf(jobs[0], "step");
  if (jobs.length === 1) return [named(jobs[0], made("strong", `${step}: ${placeOf(jobs[0])}`))];
  // a comma stays on the line of the name before it
  const links = jobs.flatMap((job, turn) => {
    const kept = made("span", "", "kept");
    kept.append(named(job, placeOf(job)), turn < jobs.length - 1 ? "," : "");
    return [" ", kept];
  });
  return [made("strong", `${step}:`), ...links];
};

// A line for the jobs of one step of which the same is said.
const lines = (list, jobs, told) => {
  const alike = (job) => [partOf(job, "step"), ...told(job)].join("\n");
  list.replaceChildren(...groupsOf(jobs, alike).map((same) => {
    const item = made("li", "");
    const [short, long] = told(same[0]);
    item.append(...jobsOfStep(same));
    if (short) item.append(" ", made("span", short, "told"));
    if (long) item.append(" ", made("span", long, "where"));
    return item;
  }));
};

// Of a job that can be done: how long it is open, how long it takes, what it takes and what to mind.
const doable = (job, day) => {
  const takes = partOf(job, "takes");
  const mind = [...awayOn(job, day), ...["fire", "care", "wind", "helpers"].map((name) => partOf(job, name))];
  return [
    [left(daysBetween(day, job.until)), hoursOf(job)].filter(Boolean).join(", "),
    [takes && `takes ${takes}`, ...mind].filter(Boolean).map(sentence).join(" "),
  ];
};

// Where jobs that can be done lie on one walk, or take one mix.
const together = (list, jobs) => {
  const walks = [...document.querySelectorAll(".walks li")].map(wordsOf);
  const pairs = jobs.flatMap((job) => [
    ...(job.asks.walk?.split(" ").map((number) => ({ key: `walk ${number}`, head: walks[number], job })) ?? []),
    ...("load" in job.asks ? [{ key: `mix ${job.asks.load}`, head: `One mix of ${partOf(job, "takes")}`, job }] : []),
  ]);
  const shared = groupsOf(pairs, ({ key }) => key).filter((pair) => pair.length > 1);
  list.replaceChildren(...shared.map((pair) => {
    const item = made("li", "");
    const places = [...new Set(pair.map(({ job }) => placeOf(job)))];
    item.append(made("strong", pair[0].head), `: ${places.join(", ")}`);
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

// The jobs that are open on a day, what closes first, first: each with its row, and with what both ask.
const openOn = (table, day) =>
  [...table.querySelectorAll("tr[data-days]")]
    .map((row) => ({ row, until: holds(spansOf(row), day)?.[1] }))
    .filter(({ until }) => until)
    .sort((one, other) => (one.until < other.until ? -1 : 1))
    .flatMap(({ row, until }) =>
      [...row.querySelectorAll("i")].map((own) => ({ own, row, until, asks: { ...row.dataset, ...own.dataset } })));

const answer = (box, table, day) => {
  const said = saidOf(box);
  const open = openOn(table, day);
  const out = new Map(open.map((job) => [job, ruledOut(job.asks, said, day)]));
  const can = open.filter((job) => !out.get(job));
  const [done, shared, not] = document.querySelectorAll(".answers > ul");
  lines(done, can, (job) => doable(job, day));
  lines(not, open.filter((job) => out.get(job)), (job) => ["", reason(job, out.get(job))]);
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
