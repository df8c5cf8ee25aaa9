import { forbidden } from "next/navigation";
import { Refused } from "@/lib/access/refused";
import { withSentence } from "./refusal";

/** Reads what a page shows; what is refused becomes status 403 with the refusal's sentence (refusal-boundary). */
export async function within<View>(read: () => View | Promise<View>): Promise<View> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    throw withSentence(forbidden, error.message);
  }
}
