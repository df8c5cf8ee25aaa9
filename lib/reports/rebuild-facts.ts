export { rebuildFacts } from "@/lib/store/facts/rebuild";
