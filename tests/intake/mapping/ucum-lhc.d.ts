declare module "@lhncbc/ucum-lhc" {
  const library: {
    UcumLhcUtils: {
      getInstance(): {
        convertUnitTo(
          from: string,
          value: number,
          to: string,
        ): { status: string; toVal: number | null };
      };
    };
  };
  export default library;
}
