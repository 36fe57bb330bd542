/** Files in the memory of EPANET. */
export interface WaterWorkspace {
  writeFile(path: string, text: string): void;
}

/** The part of EPANET's toolkit that is used here. */
export interface WaterProject {
  open(input: string, report: string, output: string): void;
  openH(): void;
  initH(flag: number): void;
  runH(): number;
  closeH(): void;
  close(): void;
  getLinkIndex(id: string): number;
  setLinkValue(index: number, property: number, value: number): void;
  getLinkValue(index: number, property: number): number;
  getNodeIndex(id: string): number;
  getNodeValue(index: number, property: number): number;
}

/** Starts EPANET. */
export function newWorkspace(): Promise<WaterWorkspace>;

/** A network to be opened from a file of the workspace. */
export function newProject(workspace: WaterWorkspace): WaterProject;
