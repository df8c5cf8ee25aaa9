export { Refusable as default } from "../_parts/refusable";
