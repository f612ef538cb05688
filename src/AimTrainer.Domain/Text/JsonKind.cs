namespace AimTrainer.Domain;

/// <summary>What sort of value stands in a JSON file.</summary>
public enum JsonKind
{
    /// <summary>Members between braces.</summary>
    Object,

    /// <summary>Values between brackets.</summary>
    List,

    /// <summary>Characters between quotes.</summary>
    Text,

    /// <summary>A number.</summary>
    Number,

    /// <summary>True or false.</summary>
    Flag,

    /// <summary>Nothing.</summary>
    Null,
}
