import { RefusedPage } from "./_parts/refused-page";

export default function Forbidden() {
  return <RefusedPage sentence="This page belongs to a role that you do not have." />;
}
