// The page of now asks the device for its day and says where every job stands on it. Without this
// the page is the list by month. Days are compared as text, year first: no time zone moves them.
const isoDay = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part, place) => String(part).padStart(place ? 2 : 4, "0"))
    .join("-");

const daysBetween = (first, last) => Math.round((Date.parse(last) - Date.parse(first)) / 864e5);

const within = (spans, day) =>
  spans.some((span) => span.split("/")[0] <= day && day <= span.split("/")[1]);

// The first of these that is so, as the plan has it.
const stateOn = (job, day) => {
  if (job.closes && job.closes < day) return "missed";
  if (!job.opens || !job.closes || job.closes < job.opens) return "undated";
  if (job.asks || day < job.opens) return "waiting";
  return "open";
};

const inDays = (count) => (count === 0 ? "today" : count === 1 ? "tomorrow" : `in ${count} days`);

const told = (job, state, day) => {
  if (within(job.rest, day)) return "not today: dates to keep";
  if (state === "open") return `closes ${inDays(daysBetween(day, job.closes))}`;
  if (job.asks) return "waits for an answer";
  return `opens ${inDays(daysBetween(day, job.opens))}`;
};

const jobOf = (row) => ({
  row,
  opens: row.dataset.opens,
  closes: row.dataset.closes,
  asks: "asks" in row.dataset,
  rest: row.dataset.rest ? row.dataset.rest.split(" ") : [],
});

const list = (section, group, jobs, day) => {
  const place = section.querySelector(`[data-group="${group}"]`);
  place.hidden = jobs.length === 0;
  for (const { job, state } of jobs) {
    const row = job.row.cloneNode(true);
    row.querySelector(".told").textContent = told(job, state, day);
    place.querySelector("ul").append(row);
  }
};

addEventListener("DOMContentLoaded", () => {
  const section = document.getElementById("today");
  if (!section) return;
  const now = new Date();
  const day = isoDay(now);
  const writtenUp = section.dataset.asOf;
  section.querySelector(".day").textContent = now.toLocaleDateString("en-US", {
    weekday: "long", day: "numeric", month: "long", year: "numeric",
  });
  section.hidden = false;
  if (day < writtenUp) {
    section.querySelector(".early").hidden = false;
    return;
  }
  section.querySelector(".late").hidden = day <= section.dataset.end;
  const jobs = [...section.querySelectorAll(".every > li")].map(jobOf).map((job) => {
    const state = stateOn(job, day);
    job.row.dataset.state = state;
    return { job, state };
  });
  const byDay = (key) => (one, other) => (one.job[key] < other.job[key] ? -1 : 1);
  const open = jobs.filter((one) => one.state === "open").sort(byDay("closes"));
  const next = jobs
    .filter((one) => one.state === "waiting" && !one.job.asks)
    .filter((one) => daysBetween(day, one.job.opens) <= 30)
    .sort(byDay("opens"));
  list(section, "open", open, day);
  list(section, "asks", jobs.filter((one) => one.state === "waiting" && one.job.asks), day);
  list(section, "next", next, day);
  section.querySelector(".idle").hidden = !!section.querySelector("[data-group]:not([hidden])");
  for (const row of section.querySelectorAll(".kept > li")) {
    row.hidden = !within(row.dataset.days.split(" "), day);
  }
  section.querySelector(".keeping").hidden = !section.querySelector(".kept > li:not([hidden])");
});
