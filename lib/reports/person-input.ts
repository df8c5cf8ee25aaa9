import { z } from "zod";
import { roles } from "@/lib/access/role";
import { passwordTrouble } from "@/lib/store/sign-in/password-rules";

const blankIsNull = z
  .string()
  .trim()
  .nullish()
  .transform((text) => text || null);

/** A password that is to be kept; whether it is too near to the person is for whoever knows them to ask. */
export const newPassword = z.string().superRefine((text, context) => {
  const message = passwordTrouble(text);
  if (message) context.addIssue({ code: "custom", message });
});

/** A role as it is asked for; blank practice is the whole group. */
export const roleInput = z.object({
  role: z.enum(roles, `A role is one of ${roles.join(", ")}.`),
  practice: blankIsNull,
  clinicianKey: blankIsNull,
});

/** A new person as they are typed in. Without a password one is made. */
export const personInput = roleInput.extend({
  name: z.string().trim().min(1, "Write the person's name.").max(120, "At most 120 characters."),
  email: z
    .string()
    .trim()
    .toLowerCase()
    .pipe(z.email("Write the whole address, as name@practice.example.")),
  password: z.preprocess((text) => text || undefined, newPassword.optional()),
});
