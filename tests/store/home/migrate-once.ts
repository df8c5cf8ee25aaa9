import { migrate } from "@/lib/store/home/migrate";

/** A migration in a process of its own, to be killed in the middle: address and folder come by the environment, as JSON. */
const [url, folder] = JSON.parse(process.env.MIGRATE ?? "[]");
await migrate(url, folder);
