// A number's mark leads to its working: opens it, also when it is folded away.
const unfold = () => {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target) return;
  for (let fold = target.closest("details"); fold; fold = fold.parentElement.closest("details")) {
    fold.open = true;
  }
  target.scrollIntoView();
};
addEventListener("hashchange", unfold);
addEventListener("DOMContentLoaded", unfold);

// The theme's labels open the contents and the search for a finger or a mouse. Here a key does too:
// Enter or Space on the label opens, Escape closes and gives the focus back.
const opener = (box, words, first) => {
  const label = document.querySelector(`.md-header label[for="${box.id}"]`);
  if (!label) return;
  const tell = () => label.setAttribute("aria-expanded", box.checked);
  label.setAttribute("role", "button");
  label.setAttribute("aria-label", words);
  label.tabIndex = 0;
  label.addEventListener("keydown", (pressed) => {
    if (pressed.key !== "Enter" && pressed.key !== " ") return;
    pressed.preventDefault();
    pressed.stopPropagation();
    box.click();
    if (box.checked) document.querySelector(first).focus();
  });
  addEventListener("keydown", (pressed) => {
    if (pressed.key !== "Escape" || !box.checked) return;
    box.click();
    label.focus();
  });
  box.addEventListener("change", tell);
  tell();
};
addEventListener("DOMContentLoaded", () => {
  opener(document.getElementById("__drawer"), "Contents", ".contents a");
  opener(document.getElementById("__search"), "Search", ".md-search__input");
});
