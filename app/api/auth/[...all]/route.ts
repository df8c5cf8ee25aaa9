import { answerSignIn } from "@/lib/reports/sign-in";

export const GET = answerSignIn;
export const POST = answerSignIn;
