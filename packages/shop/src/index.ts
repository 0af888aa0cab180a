export { Store } from "./store/store.js";
