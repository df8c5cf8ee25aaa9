import type { Ends } from "@/lib/statistics/interval";
import type { Figure } from "@/lib/audit/figure";
import { decimal, quantity } from "./quantity";
