// node pyodide_library.mjs TARGET MODULE... : writes a Python standard library for the browser that holds
// only what the named modules need, compiled beforehand by the very interpreter that will run it.

import { writeFileSync } from "node:fs";
import { loadPyodide } from "pyodide";

const [target, ...modules] = process.argv.slice(2);
const python = await loadPyodide();
python.globals.set("wanted", modules);

const library = python.runPython(`
import importlib, importlib.util, io, sys, zipfile

for name in wanted.to_py():
    importlib.import_module(name)

WHOLE = next(path for path in sys.path if path.endswith(".zip"))
FIXED_DATE = (1980, 1, 1, 0, 0, 0)

def compiled(path):
    """Return a .pyc that is trusted as it is, without docstrings."""
    source = importlib.util.decode_source(sys.path_importer_cache[WHOLE].get_data(path))
    code = compile(source, path, "exec", dont_inherit=True, optimize=2)
    return importlib._bootstrap_external._code_to_hash_pyc(code, importlib.util.source_hash(b""), False)

def path_in_library(module):
    spec = getattr(module, "__spec__", None)
    origin = getattr(spec, "origin", None) or ""
    return origin if origin.startswith(WHOLE) else None

paths = sorted(filter(None, map(path_in_library, list(sys.modules.values()))))
with io.BytesIO() as data:
    with zipfile.ZipFile(data, "w", zipfile.ZIP_STORED) as archive:
        for path in paths:
            name = path[len(WHOLE) + 1:].removesuffix(".pyc").removesuffix(".py") + ".pyc"
            archive.writestr(zipfile.ZipInfo(name, FIXED_DATE), compiled(path))
    whole = data.getvalue()
whole
`);

writeFileSync(target, library.toJs());
