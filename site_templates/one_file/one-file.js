// Shows one page of the book at a time, by the address behind the #. A page stands in the file as text, in
// an element that is read only where scripts are off. Nothing is asked of a network, nothing need be kept.
{
  const book = JSON.parse(document.getElementById("book").textContent);
  const [ADDRESS, MARK, TITLE, HEAD, LIST, TEXT, WORDS, BOOST, FOUND_AS] = [0, 1, 2, 3, 4, 5, 6, 7, 8];
  const texts = document.querySelectorAll("noscript");
  const shown = document.querySelector(".shown");
  const numbered = (part) => new Map(book.pages.map((page, number) => [page[part], number]));
  const [byAddress, byMark] = [numbered(ADDRESS), numbered(MARK)];

  const made = (html) => {
    const holder = document.createElement("template");
    holder.innerHTML = html;
    return holder.content;
  };

  // A browser that keeps nothing, or refuses to say so, answers with nothing.
  const kept = (name, value) => {
    try {
      const before = localStorage.getItem(name);
      if (value !== undefined) localStorage.setItem(name, value);
      return before;
    } catch {
      return null;
    }
  };

  // ---- one page ----

  const askedFor = () => {
    try {
      return decodeURIComponent(location.hash.slice(1));
    } catch {
      return "";
    }
  };

  // The page an address means, and whether a place on it is meant.
  const meant = (address) => {
    if (byAddress.has(address)) return [byAddress.get(address), false];
    const [mark, place] = address.split(":");
    if (mark === "drawn") return [pageOfDrawing(place), true];
    return byMark.has(mark) ? [byMark.get(mark), true] : [0, false];
  };

  const pageOfDrawing = (digest) =>
    Math.max(0, [...texts].findIndex((text) => text.textContent.includes(`id="drawn:${digest}"`)));

  // A drawing stands on the first page that shows it; here each page has its own.
  const draw = (part) => {
    for (const way of part.querySelectorAll("a.drawn")) {
      const id = way.getAttribute("href").slice(1);
      const here = part.querySelector(`[id="${id}"]`);
      const holder = here ?? made(texts[pageOfDrawing(id.slice(6))].textContent).querySelector(`[id="${id}"]`);
      const copy = holder.cloneNode(true);
      // the names in a drawing stand on one of its copies
      if (here) for (const one of [copy, ...copy.querySelectorAll("[id]")]) one.removeAttribute("id");
      if (copy.alt) copy.alt = way.textContent.replace("The drawing: ", "");
      way.replaceWith(copy);
    }
  };

  // The theme's script of the day knows these by names that stand once in a folder's page.
  const name = (part) => {
    for (const known of ["today", "mustnot"]) {
      const found = part.querySelector(`[id$=":${known}"]`);
      if (found) found.id = known;
    }
  };

  const link = (number, words = book.pages[number][TITLE]) =>
    made(`<a href="#${book.pages[number][ADDRESS]}">${words}</a>`).firstChild;

  const aboveTitle = (number) => {
    const [, , , head, list] = book.pages[number];
    const path = made('<nav class="path" aria-label="Where you are"></nav>').firstChild;
    const first = head ? book.pages.findIndex((page) => page[HEAD] === head) : number;
    if (head && first !== number) path.append(link(first, head));
    const listed = byAddress.get(list);
    if (listed !== undefined && listed !== number && listed !== first) {
      path.append(made(" <span>&gt;</span> "), link(listed));
    }
    if (byAddress.has("safety")) {
      const safety = link(byAddress.get("safety"), "Safety");
      safety.className = "to-safety";
      path.append(safety);
    }
    return path;
  };

  const besides = (number) => {
    const turn = document.querySelector(".turn");
    turn.replaceChildren();
    for (const [one, words] of [[number - 1, "Before"], [number + 1, "Next"]]) {
      if (!book.pages[one]) continue;
      const way = link(one);
      way.prepend(made(`<span>${words}</span> `));
      turn.append(way);
    }
  };

  // The head that is read in, below it what stands under it; the page that is read with its headings.
  const inContents = (number) => {
    const contents = document.querySelector(".contents");
    const [address, , title, head, list] = book.pages[number];
    for (const old of contents.querySelectorAll(".here ul, .added")) old.remove();
    for (const old of contents.querySelectorAll(".here")) old.classList.remove("here");
    for (const old of contents.querySelectorAll("[aria-current]")) old.removeAttribute("aria-current");
    const under = [...contents.querySelectorAll(".under")];
    for (const one of under) one.classList.toggle("read", made(head).textContent === one.dataset.head);
    const lines = [...contents.querySelectorAll("a")];
    let line = lines.findLast((one) => one.getAttribute("href") === `#${address}`);
    if (!line) {
      const listed = lines.findLast((one) => one.getAttribute("href") === `#${list}`);
      const added = made('<li class="added"></li>').firstChild;
      line = added.appendChild(link(number, title));
      (listed ? listed.closest("ul") : contents.querySelector(".read > ul")).append(added);
    }
    const first = head && book.pages.find((page) => page[HEAD] === head);
    const above = first && contents.querySelector(`.heads a[href="#${first[ADDRESS]}"]`);
    if (above) above.setAttribute("aria-current", "true");
    line.setAttribute("aria-current", "page");
    line.parentElement.classList.add("here");
    const headings = [...shown.querySelectorAll("h2[id]")].map((one) => {
      const entry = made(`<li><a href="#${one.id}"></a></li>`).firstChild;
      entry.firstChild.textContent = one.textContent;
      return entry;
    });
    if (!headings.length) return;
    const below = document.createElement("ul");
    below.append(...headings);
    line.parentElement.append(below);
  };

  const show = (number) => {
    const part = made(texts[number].textContent);
    draw(part);
    name(part);
    part.querySelector("article").prepend(aboveTitle(number));
    shown.replaceChildren(part);
    inContents(number);
    besides(number);
    document.title = `${made(book.pages[number][TITLE]).textContent} - ${made(book.of).textContent}`;
  };

  // ---- many pages, to be printed ----

  const MANY = {
    "print/sheets": ["All job sheets", (text) => text.textContent.includes('<section class="sheet')],
    "print/book": ["The whole book, in order", () => true],
  };

  const showMany = ([words, wanted]) => {
    const part = made([...texts].filter(wanted).map((text) => text.textContent).join("\n"));
    draw(part);
    name(part);
    const count = part.children.length;
    shown.replaceChildren(part);
    document.querySelector(".whole b").textContent = `${words}: ${count} ${count === 1 ? "page" : "pages"}.`;
    document.querySelector(".turn").replaceChildren();
    document.title = `${words} - ${made(book.of).textContent}`;
  };

  // ---- from page to page ----

  let read;
  const places = new Map();
  let followed = false;

  const turn = () => {
    const address = askedFor();
    const many = MANY[address];
    const [number, isPlace] = many ? [address, false] : meant(address);
    const isNew = number !== read;
    const isFirst = read === undefined;
    if (isNew) {
      document.querySelector(".whole").hidden = !many;
      document.querySelector(".prints").hidden = !!many;
      if (many) showMany(many);
      else show(number);
      read = number;
    }
    for (const id of ["__drawer", "__search"]) {
      const box = document.getElementById(id);
      if (box.checked) box.click();
    }
    if (isFirst) return;
    if (isNew) dispatchEvent(new Event("turned"));
    const back = followed ? undefined : places.get(address);
    followed = false;
    const target = isPlace ? document.getElementById(address) : many ? document.querySelector(".whole b") : shown.querySelector("h1");
    if (target) {
      if (!target.matches("a, button, input, summary")) target.tabIndex = -1;
      target.focus({ preventScroll: true });
    }
    // after the theme's script has gone to the place
    setTimeout(() => {
      if (back !== undefined) scrollTo(0, back);
      else if (!isPlace) scrollTo(0, 0);
    });
  };

  addEventListener("hashchange", turn);
  document.addEventListener("click", (clicked) => {
    const way = clicked.target.closest("a[href^='#']");
    if (!way) return;
    // the skip link is no page
    if (way.matches(".md-skip")) {
      clicked.preventDefault();
      document.getElementById("content").focus();
      return;
    }
    places.set(askedFor(), scrollY);
    followed = true;
    if (way.hash === location.hash) {
      followed = false;
      turn();
    }
  });
  addEventListener("scroll", () => {
    clearTimeout(kept.waiting);
    kept.waiting = setTimeout((address) => {
      if (address === askedFor()) places.set(address, scrollY);
    }, 100, askedFor());
  }, { passive: true });
  for (const button of document.querySelectorAll("button.print")) button.addEventListener("click", () => print());

  // ---- dark and light ----

  const inScheme = (scheme) => document.body.setAttribute("data-md-color-scheme", scheme);
  const SCHEME = "handbook scheme";
  inScheme(kept(SCHEME) || (matchMedia("(prefers-color-scheme: dark)").matches ? "slate" : "default"));
  document.querySelector(".scheme").addEventListener("click", () => {
    const other = document.body.getAttribute("data-md-color-scheme") === "slate" ? "default" : "slate";
    inScheme(other);
    kept(SCHEME, other);
  });

  // ---- a newer copy on this device ----

  {
    // two readers' books of one property differ in the name of their file; a phone numbers a second copy
    const file = decodeURIComponent(location.pathname).split("/").pop().replace(/ ?\(\d+\)/, "");
    const name = `handbook ${book.of} ${file}`;
    const before = kept(name);
    if (before && before > book.day) {
      const older = document.querySelector(".older");
      older.querySelector("b").textContent = new Date(`${before}T12:00`).toLocaleDateString("en-US", {
        month: "short", day: "numeric", year: "numeric",
      });
      older.hidden = false;
    } else {
      kept(name, book.day);
    }
  }

  // ---- search: the index of the folder, asked and weighed as the theme's search does it ----

  const FIELDS = { title: (page) => page[FOUND_AS] ?? page[TITLE], text: (page) => page[TEXT], words: (page) => page[WORDS] };
  const SATURATED = 1.2; // of Okapi BM25 without the length of a text: how soon a word said again counts no more
  const MOST_HITS = 30;
  const SEPARATOR = new RegExp(book.search.separator);
  const wordsOf = (text) =>
    made(text).textContent.toLowerCase().split(SEPARATOR).filter((word) => word && !SMALL.has(word));

  let index;
  const indexed = () => {
    const terms = new Map();
    book.pages.forEach((page, number) => {
      for (const [field, of] of Object.entries(FIELDS)) {
        for (const word of wordsOf(of(page))) {
          if (!terms.has(word)) terms.set(word, {});
          const pages = (terms.get(word)[field] ??= new Map());
          pages.set(number, (pages.get(number) || 0) + 1);
        }
      }
    });
    return terms;
  };

  const weighed = (pages, field, among) => {
    const rare = Math.log(1 + Math.abs((book.pages.length - among + 0.5) / (among + 0.5)));
    const boost = book.search.fields[field].boost;
    return [...pages].map(([number, count]) => {
      const often = ((SATURATED + 1) * count) / (SATURATED + count);
      return [number, Math.round(rare * often * boost * book.pages[number][BOOST] * 1000) / 1000];
    });
  };

  const search = (typed) => {
    index ??= indexed();
    const asked = wordsOf(withoutSmallWords(typed).replace(/[<&"*~^+]/g, " "));
    const [weights, scores, met] = [new Map(), new Map(), new Map()];
    for (const word of asked) {
      for (const term of index.keys()) {
        if (term.startsWith(word)) weights.set(term, (weights.get(term) || 0) + 1);
      }
    }
    const length = Math.hypot(...weights.values());
    for (const [term, weight] of weights) {
      const fields = index.get(term);
      const among = Object.values(fields).reduce((sum, pages) => sum + pages.size, 0);
      for (const [field, pages] of Object.entries(fields)) {
        for (const [number, score] of weighed(pages, field, among)) {
          scores.set(number, (scores.get(number) || 0) + (weight * score) / length);
          if (!met.has(number)) met.set(number, new Set());
          for (const word of asked) if (term.startsWith(word)) met.get(number).add(word);
        }
      }
    }
    const share = (number) => 1 + met.get(number).size / new Set(asked).size;
    return [...scores].map(([number, score]) => [number, score * (1 + share(number) ** 2)])
      .sort(([, one], [, other]) => other - one).map(([number]) => number);
  };

  const box = document.getElementById("__search");
  const typed = document.getElementById("find");
  box.addEventListener("change", () => {
    if (box.checked) typed.focus();
  });
  typed.addEventListener("input", () => {
    const hits = typed.value.trim() ? search(typed.value) : [];
    document.querySelector(".found").textContent = typed.value.trim()
      ? `${hits.length || "No"} ${hits.length === 1 ? "page" : "pages"}` : "";
    document.querySelector(".find ol").replaceChildren(
      ...hits.slice(0, MOST_HITS).map((number) => {
        const page = book.pages[number];
        const way = link(number, FIELDS.title(page));
        if (page[HEAD]) way.append(made(`<small>${page[HEAD]}</small>`));
        const line = document.createElement("li");
        line.append(way);
        return line;
      })
    );
  });

  turn();
}
