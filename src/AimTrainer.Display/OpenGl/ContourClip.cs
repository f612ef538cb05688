namespace AimTrainer.Display;

/// <summary>
/// Cuts closed contours by half planes. Where a contour is not convex the parts that are left hang together along the cut; those
/// stretches run to and fro and add nothing to the area. Source: Sutherland and Hodgman, Reentrant polygon clipping, 1974.
/// </summary>
internal sealed class ContourClip
{
    private List<XY> _from = [];
    private List<XY> _to = [];

    /// <summary>The contour that was given, cut by every half plane; valid until the next call. Empty when nothing is left.</summary>
    public List<XY> Cut(List<XY> contour, ReadOnlySpan<HalfPlane> keep)
    {
        var current = contour;
        foreach (var half in keep)
        {
            if (IsInside(current, half))
            {
                continue;
            }

            _to.Clear();
            for (var i = 0; i < current.Count; i++)
            {
                var (here, next) = (current[i], current[i + 1 == current.Count ? 0 : i + 1]);
                var (at, then) = (half.At(here), half.At(next));
                if (at >= 0)
                {
                    _to.Add(here);
                }

                if ((at > 0 && then < 0) || (at < 0 && then > 0))
                {
                    _to.Add(here.Towards(next, at / (at - then)));
                }
            }

            // What was read from is only ever written to after it was read whole.
            (_from, _to) = (_to, _from);
            current = _from;
        }

        return current;
    }

    private static bool IsInside(List<XY> contour, HalfPlane half)
    {
        foreach (var point in contour)
        {
            if (half.At(point) < 0)
            {
                return false;
            }
        }

        return true;
    }
}
