using System.Runtime.InteropServices;

namespace AimTrainer.Display;

/// <summary>A corner of a rectangle of pixels, as the GPU gets it.</summary>
/// <param name="X">Pixels from the left.</param>
/// <param name="Y">Pixels from the top.</param>
/// <param name="At">What added to row x stride + column gives the place of a pixel's coverage; 0 for a solid rectangle.</param>
/// <param name="Stride">Bytes in a row of its tile; 0 for a solid rectangle.</param>
/// <param name="Colour">Its colour.</param>
[StructLayout(LayoutKind.Sequential, Pack = 4)]
internal readonly record struct MeshVertex(float X, float Y, int At, int Stride, LinearColour Colour);
