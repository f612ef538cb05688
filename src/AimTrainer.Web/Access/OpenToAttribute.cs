namespace AimTrainer.Web;

/// <summary>Says on a page or a call who may go through; without it only the coach may.</summary>
/// <param name="door">Who.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OpenToAttribute(Door door) : Attribute
{
    /// <summary>Who.</summary>
    public Door Door { get; } = door;
}
