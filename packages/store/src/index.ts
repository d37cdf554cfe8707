export { FileStore, type ReadFile, type Written } from "./file-store.js";
