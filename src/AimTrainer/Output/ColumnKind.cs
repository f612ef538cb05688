namespace AimTrainer.Output;

/// <summary>How a column of a table is set.</summary>
internal enum ColumnKind
{
    /// <summary>From the left, broken over lines where it must be.</summary>
    Words,

    /// <summary>From the left, never broken: something to be copied.</summary>
    Name,

    /// <summary>From the right, never broken.</summary>
    Number,
}
