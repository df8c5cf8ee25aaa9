import { signInService } from "@/lib/store/sign-in/sign-in";

/** The six digits of now. */
export async function codeOf(secret: string): Promise<string> {
  return (await signInService().api.generateTOTP({ body: { secret } })).code;
}

/** RFC 4648, 6. */
export function fromBase32(text: string): string {
  const bits = [...text]
    .map((letter) =>
      "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".indexOf(letter).toString(2).padStart(5, "0"),
    )
    .join("");
  return (bits.match(/.{8}/g) ?? [])
    .map((byte) => String.fromCharCode(Number.parseInt(byte, 2)))
    .join("");
}
