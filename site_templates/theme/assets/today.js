// Picks among lines written for every day of the season those that hold on the device's day. Without
// this, a page shows the rest of the month it was written in. Days are compared as text, year first:
// no time zone moves them.
const isoDay = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part, place) => String(part).padStart(place ? 2 : 4, "0"))
    .join("-");

const daysBetween = (first, last) => Math.round((Date.parse(last) - Date.parse(first)) / 864e5);

const spansOf = (row) => row.dataset.days.split(" ").filter(Boolean).map((span) => span.split("/"));

const holds = (spans, day) => spans.find(([first, last]) => first <= day && day <= last);

const inWords = (day) =>
  new Date(`${day}T12:00`).toLocaleDateString("en-US", {
    month: "short", day: "numeric", year: "numeric",
  });

// Of work: at most so many lines, and so few are filled up with what begins soon.
const MOST = 7;
const FEWEST = 3;
const SOON_DAYS = 30;

// Today is one of the days that are left, as on the sheet.
const left = (count) => (count === 0 ? "last day today" : `${count + 1} days left`);

const begins = (count, day) => (count === 1 ? "begins tomorrow" : `begins ${inWords(day)}, in ${count} days`);

// Where a line of work stands on a day: what it says, and what it is sorted by.
const standing = (row, day) => {
  // no day of it is known that can be used: nothing but when it is over
  if (row.dataset.ends) return { row, state: row.dataset.ends < day ? "closed" : "undated" };
  const spans = spansOf(row);
  const open = holds(spans, day);
  if (open) {
    const told = "asks" in row.dataset ? "waits for an answer" : left(daysBetween(day, open[1]));
    return { row, state: "asks" in row.dataset ? "asks" : "open", by: open[1], told };
  }
  const next = spans.find(([first]) => first > day);
  if (!next) return { row, state: "closed", by: spans.at(-1)[1], told: "" };
  const told = begins(daysBetween(day, next[0]), next[0]);
  return { row, state: spans[0][0] < day ? "held" : "next", by: next[0], told };
};

const show = (row, told) => {
  row.hidden = false;
  row.querySelector(".told").textContent = told;
  row.parentElement.append(row);
};

const work = (box, day) => {
  const lines = [...box.querySelectorAll(".work > li")].map((row) => standing(row, day));
  const of = (state) =>
    lines.filter((line) => line.state === state).sort((one, other) => (one.by < other.by ? -1 : 1));
  for (const line of lines) {
    line.row.hidden = true;
    line.row.dataset.state = line.state;
  }
  const now = [...of("open"), ...of("asks")];
  const shown = now.slice(0, MOST);
  const soon = [...of("next"), ...of("held")].filter((line) => daysBetween(day, line.by) <= SOON_DAYS);
  shown.push(...soon.slice(0, Math.max(0, FEWEST - shown.length)));
  for (const line of shown) show(line.row, line.told);
  box.querySelector(".idle").hidden = shown.length > 0;
  const rest = box.querySelector(".rest");
  rest.hidden = now.length <= MOST;
  rest.firstChild.textContent = `${now.length - MOST} more that can be done today`;
  const held = of("held");
  box.querySelector(".held").hidden = held.length === 0;
  box.querySelector(".held span").textContent =
    [...new Set(held.map(({ row }) => row.querySelector("strong").textContent))].slice(0, MOST).join(", ");
  // what waited for an answer that never came was not to be done
  const closed = of("closed").filter(({ row }) => !("asks" in row.dataset));
  return closed.reduce((count, { row }) => count + Number(row.dataset.count), 0);
};

const lasts = ([first, last]) => (first === last ? "today" : `until ${inWords(last)}`);

const notToday = (list, day, closed) => {
  for (const row of list.querySelectorAll("li[data-days]")) {
    const span = holds(spansOf(row), day);
    row.hidden = !span;
    if (span) row.querySelector(".told").textContent = lasts(span);
  }
  const line = list.querySelector("li.closed");
  const count = Number(line.dataset.closed) + closed;
  line.hidden = count === 0;
  const words = line.querySelector("strong");
  words.textContent = words.textContent.replace(/^\d+ \S+/, `${count} ${count === 1 ? "job" : "jobs"}`);
};

const orders = (day) => {
  const due = document.querySelector(".orders > li.due");
  if (!due) return;
  const rows = [...document.querySelectorAll(".orders > li:not(.due)")];
  const next = rows.find((row) => row.dataset.by && row.dataset.by >= day);
  for (const row of rows) row.hidden = !(row === next || !row.dataset.by);
  const over = rows.filter((row) => row.dataset.by && row.dataset.by < day).length;
  due.hidden = over === 0;
  due.firstChild.textContent = due.firstChild.textContent.replace(/\d+/, over);
};

const missed = (day) => {
  for (const row of document.querySelectorAll("li[data-last]")) row.hidden = row.dataset.last >= day;
  for (const step of document.querySelectorAll("[data-step]")) {
    step.hidden = !step.querySelector("li:not([hidden])");
  }
  const idle = document.querySelector(".idle");
  if (idle) idle.hidden = !!document.querySelector("[data-step]:not([hidden])");
};

// Bands of a season, and pictures of days, carry the first of their days and the last: the line of
// today stands where the device says. A picture says where across it its days lie, in percent.
const todayLines = (day) => {
  for (const days of document.querySelectorAll(":is(.bands, svg.picture)[data-first]")) {
    const { first, last, left = 0, across = 100 } = days.dataset;
    const share = daysBetween(first, day) / (daysBetween(first, last) + 1);
    const x = `${Number(left) + Number(across) * share}%`;
    for (const line of days.querySelectorAll("line.now")) {
      line.setAttribute("x1", x);
      line.setAttribute("x2", x);
    }
    for (const words of days.querySelectorAll("text.now")) {
      words.setAttribute("x", x);
      words.setAttribute("text-anchor", share > 0.5 ? "end" : "start");
      words.textContent = "today";
    }
    for (const mark of days.querySelectorAll(".now")) {
      mark.classList.toggle("out", day < first || day > last);
    }
  }
};

// Of a stand the answer of the device's day stands open, and those of other days behind it.
const answers = (day) => {
  for (const box of document.querySelectorAll("[data-answers]")) {
    const row = [...box.querySelectorAll("tr[data-days]")].find((one) => holds(spansOf(one), day));
    const picked = box.querySelector(".picked");
    picked.replaceChildren(...(row ? row.querySelector(".said").cloneNode(true).childNodes : []));
    picked.parentElement.hidden = !row;
    box.querySelector("details").open = !row;
    box.querySelector(".then").hidden = Boolean(row) && !("open" in row.dataset);
  }
};

const onThisDay = () => {
  const day = isoDay(new Date());
  const old = document.querySelector(".old");
  if (old) old.hidden = day <= old.dataset.oldAfter;
  todayLines(day);
  answers(day);
  const box = document.getElementById("today");
  if (box) {
    const early = day < box.dataset.asOf;
    document.querySelector(".early").hidden = !early;
    if (early) return;
    const closed = work(box, day);
    const list = document.getElementById("mustnot");
    if (list) notToday(list, day, closed);
    orders(day);
  }
  if (document.querySelector("[data-step]")) missed(day);
};
addEventListener("DOMContentLoaded", onThisDay);
addEventListener("turned", onThisDay); // where one file holds all pages, and shows another
