namespace AimTrainer.Output;

/// <summary>What the program answers to the shell.</summary>
internal static class ExitCodes
{
    public const int Ok = 0;
    public const int Failed = 1;
    public const int BadInput = 2;
}
