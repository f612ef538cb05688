namespace AimTrainer.Motion;

/// <summary>A piece of one path between two distances: a step of the integration, a parabola on even friction, or a straight roll.</summary>
/// <param name="Start">Metres past the foul line.</param>
/// <param name="End">Up to where it holds: a step in which the ball begins to roll reaches farther.</param>
/// <param name="Length">Metres from the first state to the second.</param>
/// <param name="From">State where it starts.</param>
/// <param name="To">State after its length.</param>
/// <param name="Even">For a parabola or a roll the loss of slip a second; not a number for a step.</param>
internal readonly record struct PathPiece(double Start, double End, double Length, PathState From, PathState To, double Even)
{
    /// <summary>The state at a distance inside it.</summary>
    public PathState At(double metres, in Slide slide) => double.IsNaN(Even)
        ? Step.At(From, To, Length, metres - Start, slide)
        : Parabola.At(From, metres - Start, Even, slide);
}
