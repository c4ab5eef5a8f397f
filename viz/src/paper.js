// SPDX-License-Identifier: GPL-3.0-or-later
// What things are drawn with: a matt paper whose back, seen where a plane cuts a closed surface open, is flat and hatched.
import {Color, DoubleSide, MeshLambertMaterial, Vector4} from 'three';

// Whoever looks into a closed surface through a cut sees its back, right where the cut face would be, and nothing lies
// between the two. So painting the back flat draws the cut face without making it.
function paintCutFaces(material, hatch) {
  material.onBeforeCompile = (shader) => {
    shader.uniforms.cutColour = {value: material.userData.cutColour};
    shader.uniforms.hatch = {value: hatch};
    shader.fragmentShader = shader.fragmentShader
      .replace('void main() {', 'uniform vec3 cutColour;\nuniform vec4 hatch;\nconst float nearer = 5e-6;\nvoid main() {')
      .replace(
        '#include <dithering_fragment>',
        `#include <dithering_fragment>
        gl_FragDepth = gl_FragCoord.z;
        #if NUM_CLIPPING_PLANES > 0
        gl_FragDepth -= gl_FrontFacing ? 0.0 : nearer; // before what touches it there, and before its own edges
        #endif
        if (!gl_FrontFacing && opacity > 0.99) {
          float stripe = mod(dot(gl_FragCoord.xy, hatch.xy), hatch.z);
          gl_FragColor = linearToOutputTexel(vec4(stripe < 1.3 * hatch.w ? cutColour * 0.5 : cutColour, 1.0));
        }`,
      );
  };
  material.customProgramCacheKey = () => 'cut faces';
}

// One paper a thing, with stripes of its own slant, so that neighbours in a cut differ without colour too.
export function paper(index, pixelRatio) {
  const material = new MeshLambertMaterial({side: DoubleSide});
  material.userData.cutColour = new Color();
  const slant = Math.PI * (0.25 + ((index * 2) % 5) * 0.2);
  const every = (8 + (index % 3) * 3) * pixelRatio;
  paintCutFaces(material, new Vector4(Math.cos(slant), Math.sin(slant), every, pixelRatio));
  return material;
}

export function colourPaper(material, colour) {
  material.color.set(colour);
  material.userData.cutColour.set(colour);
}

export function seeThrough(material, isSeeThrough) {
  if (material.transparent !== isSeeThrough) {
    material.transparent = isSeeThrough;
    material.opacity = isSeeThrough ? 0.22 : 1;
    material.depthWrite = !isSeeThrough;
    material.needsUpdate = true;
  }
}
