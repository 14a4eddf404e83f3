// Search runs in a worker, which browsers refuse to a page opened from a folder. There, and only
// there, this stands in for it: the worker's script runs in a hidden frame of the same page.
if (location.protocol === "file:") {
  window.Worker = class extends EventTarget {
    constructor(address) {
      super();
      this.waiting = [];
      const frame = document.createElement("iframe");
      frame.hidden = true;
      frame.title = "Search";
      frame.srcdoc = "<!doctype html><title>Search</title><body></body>";
      frame.onload = () => this.start(address);
      this.frame = frame;
      document.body.append(frame);
    }

    async start(address) {
      this.frame.onload = null;
      const inside = this.frame.contentWindow;
      inside.importScripts = async (...scripts) => {
        for (const script of scripts) await this.load(new URL(script, address));
      };
      inside.postMessage = (data) => this.dispatchEvent(new MessageEvent("message", { data }));
      await this.load(address);
      this.ready = true;
      this.waiting.forEach((data) => this.postMessage(data));
    }

    load(address) {
      return new Promise((resolve, reject) => {
        const script = this.frame.contentDocument.createElement("script");
        script.src = address;
        script.onload = resolve;
        script.onerror = reject;
        this.frame.contentDocument.body.append(script);
      });
    }

    postMessage(data) {
      if (this.ready) {
        this.frame.contentWindow.dispatchEvent(new MessageEvent("message", { data }));
      } else {
        this.waiting.push(data);
      }
    }

    terminate() {
      this.frame.remove();
    }
  };
}
