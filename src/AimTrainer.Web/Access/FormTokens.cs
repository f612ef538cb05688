namespace AimTrainer.Web;

/// <summary>The names that the framework's guard against forged requests goes by here.</summary>
internal static class FormTokens
{
    /// <summary>The header that a page of ours sends.</summary>
    public const string Header = "x-aimtrainer-form";

    /// <summary>The cookie that goes with it.</summary>
    public const string Cookie = "aimtrainer.form";
}
