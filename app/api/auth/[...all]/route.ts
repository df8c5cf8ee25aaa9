import { answerSignIn } from "@/lib/reports/sign-in";

export const POST = answerSignIn;
