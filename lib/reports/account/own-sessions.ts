export { endOwnSignIns as endOwnSessions } from "@/lib/store/sign-in/own-sign-ins";
