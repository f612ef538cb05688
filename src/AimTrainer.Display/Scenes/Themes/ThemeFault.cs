namespace AimTrainer.Display;

/// <summary>Two colours of a theme that are too alike.</summary>
/// <param name="Palette"><c>lane</c> or <c>screen</c>.</param>
/// <param name="Colour">The colour's key in the file.</param>
/// <param name="Found">How alike it is, and to what.</param>
/// <param name="Allowed">What is allowed, and what to do.</param>
public sealed record ThemeFault(string Palette, string Colour, string Found, string Allowed);
