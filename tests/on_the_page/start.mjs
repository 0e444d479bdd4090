// Starts the page's Python in node and runs pytest in it. What is asked comes as JSON.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const begin = async ({ runtime, python: info }) => {
  const { loadPyodide } = await import(pathToFileURL(join(runtime, 'pyodide.mjs')));
  return loadPyodide({
    indexURL: runtime,
    lockFileContents: { info, packages: {} }, // as on the page: no package is ever loaded
    packageBaseUrl: runtime,
    env: {
      PYTEST_DISABLE_PLUGIN_AUTOLOAD: '1',
      PYTHONDONTWRITEBYTECODE: '1',
      PYTHONUNBUFFERED: '1', // each line is seen when it is written
    },
  });
};

// The folders of the disk, by the places where Python sees them: to read, not to write.
const show = (python, seen) => {
  const { NODEFS } = python.FS.filesystems;
  const refuse = () => {
    throw new python.FS.ErrnoError(69); // a read-only file system
  };
  const { open } = NODEFS.stream_ops;
  NODEFS.stream_ops.open = (stream) => (stream.flags & 3 ? refuse() : open(stream));
  for (const name of ['mknod', 'rename', 'rmdir', 'setattr', 'symlink', 'unlink']) {
    NODEFS.node_ops[name] = refuse;
  }
  for (const [place, folder] of Object.entries(seen)) python.mountNodeFS(place, folder);
};

const run = (python, { workbook, path, arguments: given }) => {
  python.FS.chdir(workbook);
  python.globals.set('path', python.toPy(path));
  python.globals.set('given', python.toPy(given));
  return python.runPython(`
import sys
sys.path[:0] = path
import pytest
int(pytest.main(given))
`);
};

try {
  const asked = JSON.parse(readFileSync(0, 'utf8'));
  const python = await begin(asked);
  show(python, asked.seen);
  process.exitCode = run(python, asked);
} catch (error) {
  console.error(error.message); // node would print the whole file that it comes from
  process.exitCode = 3;
}
