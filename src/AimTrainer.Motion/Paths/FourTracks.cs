using System.Runtime.CompilerServices;

namespace AimTrainer.Motion;

/// <summary>The balls that are worked out together.</summary>
[InlineArray(PathKernel.Width)]
internal struct FourTracks
{
    private Track _first;
}
