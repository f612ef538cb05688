namespace AimTrainer.Web;

/// <summary>A group was made.</summary>
/// <param name="Id">Its id.</param>
public sealed record GroupMade(string Id);
