namespace AimTrainer.Web;

/// <summary>What a list says of a program.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Purpose">What it is to bring about.</param>
/// <param name="WhoFor">Who it is for.</param>
/// <param name="Weeks">How many weeks.</param>
public sealed record ProgramListed(string Id, string Name, string Purpose, string WhoFor, int Weeks);
