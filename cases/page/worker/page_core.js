// The core as the page sees it: asked in turn, answered by a worker.
const PageCore = {
  async start() {
    const [wasm, pack, source] = await Promise.all(['core-wasm', 'core-pack', 'worker-source'].map(PageData.bytes));
    const url = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
    const worker = new Worker(url);
    URL.revokeObjectURL(url);
    const waiting = [];
    let asked = null, number = 0;

    const next = () => {
      if (asked !== null || waiting.length === 0) return;
      asked = waiting.shift();
      worker.postMessage({ id: asked.id, request: asked.request });
    };
    const opened = new Promise((resolve, reject) => {
      worker.onmessage = ({ data }) => {
        if (data.opened !== undefined) {
          if (data.opened) resolve();
          else reject(new Error(data.error.text));
          return;
        }
        const done = asked;
        asked = null;
        next();
        done.resolve(data.answer);
      };
      worker.onerror = (fault) => reject(new Error(fault.message || 'the worker cannot be started'));
    });
    worker.postMessage({ wasm, pack }, [wasm.buffer, pack.buffer]);
    await opened;

    return {
      get busy() { return asked !== null; },
      get waiting() { return waiting.length; },
      // One after another, in the order asked. `tag`: by which those that have not begun may be dropped.
      ask(request, tag = '') {
        return new Promise((resolve) => {
          waiting.push({ id: ++number, request, tag, resolve });
          next();
        });
      },
      drop(tag) {
        for (let k = waiting.length - 1; k >= 0; --k)
          if (waiting[k].tag === tag) waiting.splice(k, 1)[0].resolve({ dropped: true });
      },
    };
  },
};
