namespace AimTrainer.Domain;

/// <summary>What people change in the order of a lane.</summary>
public abstract record TurnChange
{
    /// <summary>A bowler comes, at the end of the order; late ones too.</summary>
    /// <param name="SessionId">The bowler's session.</param>
    /// <param name="Bowler">The name in the records.</param>
    /// <param name="Shots">Shots that the session has already.</param>
    public sealed record Join(string SessionId, string Bowler, int Shots = 0) : TurnChange;

    /// <summary>A bowler leaves for now: the session stays open, the turn goes on.</summary>
    public sealed record Leave(string SessionId) : TurnChange;

    /// <summary>A bowler who left is back, in the old place.</summary>
    public sealed record Return(string SessionId) : TurnChange;

    /// <summary>Two bowlers change places. The turn stays with the place, so that whoever comes to it throws.</summary>
    public sealed record Swap(string SessionId, string With) : TurnChange;

    /// <summary>Whoever has the turn is passed over this time.</summary>
    public sealed record Skip : TurnChange;

    /// <summary>A bowler gets the turn now; the order stays.</summary>
    public sealed record Give(string SessionId) : TurnChange;

    /// <summary>A turn is to have so many shots from now on.</summary>
    public sealed record Length(int ShotsATurn) : TurnChange;
}
