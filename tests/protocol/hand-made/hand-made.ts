import { cases as activation } from "./activation";
import { cases as beforeIrrigation } from "./before-irrigation";
import { cases as chairDays } from "./chair-days";
import { cases as chelator } from "./chelator";
import { cases as chlorhexidine } from "./chlorhexidine";
import { cases as courses } from "./courses";
import { cases as equipment } from "./equipment";
import type { HandMadeCase } from "./hand-made-case";
import { cases as hypochloriteFloor } from "./hypochlorite-floor";
import { cases as mainIrrigant } from "./main-irrigant";
import { cases as outside } from "./outside-the-treatment-population";
import { cases as recordComplete } from "./record-complete";
import { cases as separations } from "./separations";
import { cases as tipAndFlow } from "./tip-and-flow";
import { cases as uses } from "./uses";

/** Every case, of all 23 criteria. */
export const handMadeCases: readonly HandMadeCase[] = [
  ...outside,
  ...beforeIrrigation,
  ...mainIrrigant,
  ...hypochloriteFloor,
  ...courses,
  ...chelator,
  ...chlorhexidine,
  ...tipAndFlow,
  ...activation,
  ...uses,
  ...separations,
  ...equipment,
  ...chairDays,
  ...recordComplete,
];
