namespace AimTrainer.Web;

/// <summary>The mark of a call that is sent with POST for the length of its body and changes nothing: it leaves no line in the audit.</summary>
internal sealed class OnlyComputes;
