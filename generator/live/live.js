// An open page asks for what is new, and shows itself anew once it is; what is wrong stands on it.
(() => {
  const own = document.currentScript;
  const page = decodeURIComponent(location.pathname.slice(1)) || "index.html";
  const wait = (seconds) => new Promise((done) => setTimeout(done, seconds * 1000));
  let version = Number(own.dataset.version);
  let box;
  const show = (faults) => {
    box?.remove();
    if (!faults.length) return;
    box = document.createElement("div");
    box.setAttribute("role", "alert");
    box.style.cssText =
      "position:fixed;inset:auto 0 0;z-index:9;max-height:50vh;overflow:auto;padding:.8rem 1rem;" +
      "background:#fff;color:#111;border-top:4px solid #a11;font:16px/1.4 sans-serif";
    const head = document.createElement("strong");
    head.textContent = "Not made anew. What stands here was made before.";
    box.append(head);
    for (const fault of faults) {
      const line = document.createElement("p");
      line.style.margin = ".3rem 0";
      line.textContent = fault;
      box.append(line);
    }
    document.body.append(box);
  };
  const ask = async () => {
    for (;;) {
      try {
        const asked = `/.live?version=${version}&page=${encodeURIComponent(page)}`;
        const news = await (await fetch(asked, { cache: "no-store" })).json();
        version = news.version;
        if (news.again) return location.reload();
        show(news.faults);
      } catch {
        await wait(1);
      }
    }
  };
  ask();
})();
