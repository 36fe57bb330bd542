// Plain JavaScript because the declarations of epanet-js 0.9.0 do not resolve under Node's module rules.
import { Project, Workspace } from 'epanet-js';

export async function newWorkspace() {
  const workspace = new Workspace();
  await workspace.loadModule();
  return workspace;
}

export function newProject(workspace) {
  return new Project(workspace);
}
