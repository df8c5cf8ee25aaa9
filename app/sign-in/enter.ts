"use server";

import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { z } from "zod";
import { signIn, signInSecond } from "@/lib/reports/sign-in";
import { setCookies } from "../_parts/set-cookies";
import { wantedAddress } from "./wanted-address";

/** What the form shows after a try: the email as typed, and what is wrong. */
export type Answer = {
  email: string;
  sentence?: string;
  emailError?: string;
  passwordError?: string;
};

const form = z.object({
  email: z.string().trim().pipe(z.email("Write the whole address, as name@practice.example.")),
  password: z.string().min(1, "Write your password.").max(1000, "This is too long to be yours."),
  to: z.string().default("/"),
});

/** The sign-in's action: sets the session's cookie and leads on, or answers in words. */
export async function enter(_: Answer, given: FormData): Promise<Answer> {
  const email = String(given.get("email") ?? "");
  const read = form.safeParse(Object.fromEntries(given));
  if (!read.success) {
    const wrong = z.flattenError(read.error).fieldErrors;
    return { email, emailError: wrong.email?.[0], passwordError: wrong.password?.[0] };
  }
  const answer = await signIn(read.data, await headers());
  if ("sentence" in answer) return { email, sentence: answer.sentence };
  await setCookies(answer.cookies);
  const to = wantedAddress({ to: read.data.to });
  redirect(answer.second ? `/sign-in/second?to=${encodeURIComponent(to)}` : to);
}

/** The second step's action: the code of now, or a recovery code. */
export async function enterSecond(_: Answer, given: FormData): Promise<Answer> {
  const code = String(given.get("code") ?? "").slice(0, 100);
  if (code.trim() === "") return { email: "", passwordError: "Write the code." };
  const answer = await signInSecond(code, await headers());
  if ("sentence" in answer) return { email: "", sentence: answer.sentence };
  await setCookies(answer.cookies);
  redirect(wantedAddress({ to: String(given.get("to") ?? "/") }));
}
