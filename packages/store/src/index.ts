export { FileStore, type Written } from "./file-store.js";
