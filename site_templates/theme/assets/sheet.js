// A job sheet counts its days left from the device's day; without this those of the book's day
// stand. On paper all that is folded on the sheet, and the cautions behind it, are open. Days are compared as text, year first.
const dayOf = (date) =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()]
    .map((part, place) => String(part).padStart(place ? 2 : 4, "0"))
    .join("-");

const countFrom = (day, [first, last]) =>
  Math.max(0, Math.round((Date.parse(last) - Date.parse(day < first ? first : day)) / 864e5) + 1);

const countDays = () => {
  const day = dayOf(new Date());
  for (const sheet of document.querySelectorAll(".sheet")) {
    const left = sheet.querySelector(".left");
    if (!left || day < left.dataset.asOf) continue;
    const spans = left.dataset.usable.split(" ").map((span) => span.split("/"));
    const count = spans.reduce((sum, span) => sum + countFrom(day, span), 0);
    const today = spans.some(([first, last]) => first <= day && day <= last);
    left.textContent = count ? `${count}${today ? ", today is one" : ""}` : "none";
    const state = sheet.querySelector(".stands");
    if (state && today) state.textContent = "open today";
    else if (state && !count) state.textContent = "missed";
    else if (state && day > spans[0][1]) state.textContent = "not today";
  }
};
addEventListener("DOMContentLoaded", countDays);
addEventListener("turned", countDays); // where one file holds all pages, and shows another

addEventListener("beforeprint", () => {
  for (const folded of document.querySelectorAll(".sheet details, details.cautions")) folded.open = true;
});
