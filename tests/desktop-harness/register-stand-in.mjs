import { register } from "node:module";

// node --import <this file> out/main/desktop.js: the built desktop door, with the stand-in for Electron.
register("./resolve-electron.mjs", import.meta.url);
