// Puts the Python package into the file system of an interpreter.
// Nothing is executed here: a calculator's module runs when it is first asked for.

const HOME = "/home/rebrace";

/** Python statements that make the written package importable. */
export const FIND_PACKAGE = `import sys\nsys.path.insert(0, "${HOME}")`;

/** Write {"calc/answer.py": "source", ...} into an Emscripten file system. */
export function writePackage(fileSystem, sources) {
  for (const [path, source] of Object.entries(sources)) {
    const whole = `${HOME}/${path}`;
    makeFolders(fileSystem, whole.split("/").slice(1, -1));
    fileSystem.writeFile(whole, source);
  }
}

function makeFolders(fileSystem, names) {
  let folder = "";
  for (const name of names) {
    folder += `/${name}`;
    if (!fileSystem.analyzePath(folder).exists) fileSystem.mkdir(folder);
  }
}
