namespace AimTrainer.Display;

/// <summary>Why a display is dark.</summary>
public abstract record DarkReason
{
    private DarkReason()
    {
    }

    /// <summary>What it shows instead.</summary>
    /// <param name="onLane">Whether it lights the lane.</param>
    public abstract DarkPicture Picture(bool onLane);

    /// <summary>All projection is stopped.</summary>
    public sealed record Stopped : DarkReason
    {
        /// <inheritdoc/>
        public override DarkPicture Picture(bool onLane) => DarkPicture.Stopped(onLane);
    }

    /// <summary>It has not heard of its host yet, and so does not know whether it may show anything.</summary>
    /// <param name="Server">The host.</param>
    public sealed record Waiting(string Server) : DarkReason
    {
        /// <inheritdoc/>
        public override DarkPicture Picture(bool onLane) => onLane ? new DarkPicture(null, []) : new DarkPicture("Waiting for the host", [$"No answer from {Server} yet.", "This display goes on by itself."]);
    }

    /// <summary>It may not look at its host.</summary>
    /// <param name="Why">Why, in a sentence.</param>
    public sealed record NotAllowed(string Why) : DarkReason
    {
        /// <inheritdoc/>
        public override DarkPicture Picture(bool onLane) => new("Not connected", [Why, "At the coach's console: Displays, make a token, and start this display with it."]);
    }

    /// <summary>It does not understand its host.</summary>
    /// <param name="Why">Why, in a sentence.</param>
    public sealed record Differs(string Why) : DarkReason
    {
        /// <inheritdoc/>
        public override DarkPicture Picture(bool onLane) => new("Host and display differ", [Why]);
    }
}
