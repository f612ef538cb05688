namespace AimTrainer.Domain;

/// <summary>How much a coach's action is about.</summary>
public enum Scope
{
    /// <summary>The aim that is shown.</summary>
    Aim,

    /// <summary>The whole block.</summary>
    Block,
}
