// Python, in a worker of its own: it is started, says how far it is, and answers one question after
// the other. What comes in and goes out is text.

let answer;

// How much of the files has come, by what the build wrote down of their sizes.
const counting = (sizes) => {
  const whole = Object.values(sizes).reduce((sum, size) => sum + size, 0);
  let come = 0;
  const counted = (response, address) => {
    const counter = new TransformStream({
      transform(chunk, out) {
        come += chunk.byteLength;
        postMessage({ come: Math.min(1, come / whole) });
        out.enqueue(chunk);
      },
    });
    const { status, statusText } = response;
    const headers = new Headers(response.headers);
    // A host may not know the type, and without it nothing is compiled while it comes.
    if (String(address).endsWith('.wasm')) headers.set('content-type', 'application/wasm');
    return new Response(response.body.pipeThrough(counter), { status, statusText, headers });
  };
  const load = self.fetch.bind(self);
  self.fetch = async (address, ...rest) => {
    const response = await load(address, ...rest);
    return response.ok && response.body ? counted(response, address) : response;
  };
};

// A bundle is a JSON object, compressed: the text of each file by its path.
const unpacked = async (address) => {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${response.status} ${address}`);
  return new Response(response.body.pipeThrough(new DecompressionStream('gzip'))).json();
};

const lay = (python, files) => {
  for (const [path, text] of Object.entries(files)) {
    const place = `/workbook/${path}`;
    python.FS.mkdirTree(place.slice(0, place.lastIndexOf('/')));
    python.FS.writeFile(place, text);
  }
};

const begin = async ({ python: folder, bundle, later, lock, sizes }) => {
  counting(sizes);
  const { loadPyodide } = await import(`${folder}pyodide.mjs`);
  const [python, files] = await Promise.all([
    loadPyodide({
      indexURL: folder,
      lockFileContents: lock, // no package is ever loaded
      packageBaseUrl: folder,
    }),
    unpacked(bundle),
  ]);
  postMessage({ come: 1 });
  lay(python, files);
  python.runPython('import sys; sys.path.insert(0, "/workbook"); sys.dont_write_bytecode = True');
  const ask = python.runPython('from repairlib.faces.page.answers import answer; answer');
  const waiting = new Map(Object.entries(later)); // the bundle that a tool needs besides
  answer = async (question) => {
    const { tool } = JSON.parse(question);
    if (waiting.has(tool)) {
      lay(python, await unpacked(waiting.get(tool)));
      waiting.delete(tool);
      python.runPython('import importlib; importlib.invalidate_caches()');
    }
    return ask(question);
  };
  postMessage({ ready: true });
};

onmessage = async ({ data }) => {
  if (data.begin) {
    try {
      await begin(data.begin);
    } catch (error) {
      postMessage({ trouble: String(error?.message ?? error) });
    }
    return;
  }
  try {
    postMessage({ number: data.number, found: await answer(data.question) });
  } catch (error) {
    postMessage({ number: data.number, failed: String(error?.message ?? error) });
  }
};
