namespace AimTrainer.Sessions;

/// <summary>How bowlers' names may be shown on screens.</summary>
public interface IScreenNames
{
    /// <summary>The name of a bowler for screens.</summary>
    string Of(string bowler);
}
