export { isTimeZone } from "@/lib/records/time-zone";
