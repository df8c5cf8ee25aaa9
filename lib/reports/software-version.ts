import project from "@/package.json";

/** The version of this software, of which every export speaks. */
export const softwareVersion: string = project.version;
