// Body of the worker: one message {wasm, pack} opens the core, each {id, request} is answered. Bodies are factored while
// nobody asks.
'use strict';
let core = null, more = false;

function factorNext() {
  if (!more) return;
  more = core.factor();
  setTimeout(factorNext, 0);  // lets what has come meanwhile be answered first
}

onmessage = async ({ data }) => {
  try {
    if (core === null) {
      core = await startCore(data.wasm);
      const opened = core.open(data.pack);
      postMessage({ opened: !opened.error, error: opened.error });
      more = !opened.error;
      setTimeout(factorNext, 200);
    } else {
      const answer = core.ask(data.request);
      postMessage({ id: data.id, answer }, [answer.bytes]);
    }
  } catch (fault) {
    const error = { kind: 'core', text: String(fault && fault.message || fault) };
    postMessage(core === null ? { opened: false, error } : { id: data.id, answer: { error, bytes: new ArrayBuffer(0) } });
  }
};
