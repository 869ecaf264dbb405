// The core in its module: the few functions that it asks of a host, and its own by their names. For a worker and for
// Node alike.
function startCore(bytes) {
  let memory = null;
  const view = () => new DataView(memory.buffer);
  const host = {
    wasi_snapshot_preview1: {
      clock_time_get(id, precision, place) {
        const ms = id === 0 ? Date.now() : performance.now();
        view().setBigUint64(place, BigInt(Math.round(ms * 1e6)), true);
        return 0;
      },
      environ_sizes_get(count, size) {
        view().setUint32(count, 0, true);
        view().setUint32(size, 0, true);
        return 0;
      },
      environ_get() { return 0; },
      fd_write(file, parts, count, written) {  // what a library prints in its last moment
        let total = 0, text = '';
        for (let k = 0; k < count; ++k) {
          const at = view().getUint32(parts + 8 * k, true), size = view().getUint32(parts + 8 * k + 4, true);
          text += new TextDecoder().decode(new Uint8Array(memory.buffer, at, size));
          total += size;
        }
        if (text.trim()) console.error(text.trimEnd());
        view().setUint32(written, total, true);
        return 0;
      },
      fd_close() { return 0; },
      fd_seek() { return 70; },  // no pipe
      proc_exit(status) { throw new Error('the core stopped with status ' + status); },
    },
    env: { emscripten_notify_memory_growth() {} },
  };
  return WebAssembly.instantiate(bytes, host).then(({ instance }) => {
    const core = instance.exports;
    memory = core.memory;
    core._initialize();
    const withBytes = (call, array) => {
      const place = core.page_alloc(array.length);
      if (place === 0) throw new Error('the core has no memory left');
      new Uint8Array(memory.buffer, place, array.length).set(array);
      try {
        return call(place, array.length);
      } finally {
        core.page_free(place);
      }
    };
    const answer = () => {
      const text = new Uint8Array(memory.buffer, core.page_answer(), core.page_answer_size());
      const size = core.page_answer_bytes_size();
      const block = new Uint8Array(size);
      if (size > 0) block.set(new Uint8Array(memory.buffer, core.page_answer_bytes(), size));
      return Object.assign(JSON.parse(new TextDecoder().decode(text)), { bytes: block.buffer });
    };
    return {
      open(pack) {
        withBytes(core.page_open, pack);
        return answer();
      },
      ask(request) {
        withBytes(core.page_ask, new TextEncoder().encode(JSON.stringify(request)));
        return answer();
      },
      factor: () => core.page_factor() === 1,
      memory: () => memory.buffer.byteLength,
    };
  });
}
