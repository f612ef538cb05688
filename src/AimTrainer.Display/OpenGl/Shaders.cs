namespace AimTrainer.Display;

/// <summary>The programs of the GPU.</summary>
internal static class Shaders
{
    /// <summary>How wide the texture is that the bytes of coverage are laid out in.</summary>
    public const int CoverageRow = 1 << CoverageShift;

    private const int CoverageShift = 13;

    public const string Vertex = """
        #version 330 core
        layout(location = 0) in vec2 aPixel;
        layout(location = 1) in ivec2 aTile;
        layout(location = 2) in vec4 aColour;
        uniform vec2 uSize;
        flat out ivec2 vTile;
        flat out vec4 vColour;
        void main() {
            vTile = aTile;
            vColour = aColour;
            vec2 place = aPixel * 2.0 / uSize - 1.0;
            gl_Position = vec4(place.x, -place.y, 0.0, 1.0);
        }
        """;

    /// <summary>The colour as it is.</summary>
    public const string Opaque = """
        #version 330 core
        flat in vec4 vColour;
        out vec4 oColour;
        void main() {
            oColour = vColour;
        }
        """;

    /// <summary>The colour times the coverage of the pixel, in linear light.</summary>
    public const string Plain = Coverage + """
        void main() {
            oColour = vColour * coverage();
        }
        """;

    /// <summary>
    /// Dims by the distance down the lane, for projectors that overlap. Only the light is dimmed, not the opacity, so that what lies below
    /// is covered as without.
    /// </summary>
    public const string Dimmed = Coverage + """
        uniform mat3 uBack;    // from a pixel of the map, before the lens, to lane inches (homogeneous)
        uniform vec3 uLens;    // the middle of the map's picture and half its diagonal
        uniform vec2 uTerms;   // the lens' two radial terms
        uniform vec2 uScale;   // pixels of the map in a pixel of this framebuffer
        uniform vec4 uStretch; // from, to, length of the near and of the far overlap, in inches
        float part() {
            vec2 pixel = vec2(gl_FragCoord.x, uSize.y - gl_FragCoord.y) * uScale;
            if (uTerms != vec2(0.0)) {
                vec2 from = (pixel - uLens.xy) / uLens.z;
                float bent = length(from);
                float r = bent;
                for (int i = 0; i < 5; i++) {
                    float r2 = r * r;
                    r -= (r * (1.0 + r2 * (uTerms.x + r2 * uTerms.y)) - bent) / (1.0 + r2 * (3.0 * uTerms.x + r2 * 5.0 * uTerms.y));
                }
                pixel = uLens.xy + from * (bent > 0.0 ? r / bent : 1.0) * uLens.z;
            }
            vec3 lane = uBack * vec3(pixel, 1.0);
            float down = lane.y / lane.z;
            float near = uStretch.z > 0.0 ? (down - uStretch.x) / uStretch.z : 1.0;
            float far = uStretch.w > 0.0 ? (uStretch.y - down) / uStretch.w : 1.0;
            return clamp(min(near, far), 0.0, 1.0);
        }
        void main() {
            vec4 colour = vColour * coverage();
            oColour = vec4(colour.rgb * part(), colour.a);
        }
        """;

    private const string Coverage = """
        #version 330 core
        flat in ivec2 vTile;
        flat in vec4 vColour;
        uniform vec2 uSize;
        uniform sampler2D uCoverage;
        out vec4 oColour;
        float coverage() {
            ivec2 pixel = ivec2(gl_FragCoord.x, uSize.y - gl_FragCoord.y);
            int at = vTile.x + pixel.y * vTile.y + pixel.x * min(vTile.y, 1);
            return texelFetch(uCoverage, ivec2(at & 8191, at >> 13), 0).r;
        }

        """;
}
