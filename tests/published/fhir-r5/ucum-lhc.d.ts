/** What is used of the package, which has no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  const ucum: {
    UcumLhcUtils: { getInstance(): { validateUnitString(code: string): { status: string } } };
  };
  export default ucum;
}
