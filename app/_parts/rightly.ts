import { AskedWrongly } from "@/lib/reports/asked-period";

/** Reads what is asked for; an address that asks for what there is not becomes the sentence that says so. */
export async function rightly<View>(read: () => Promise<View>): Promise<View | { wrong: string }> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof AskedWrongly) return { wrong: error.message };
    throw error;
  }
}
