namespace AimTrainer.Web;

/// <summary>The tight limits: passphrases and pairing codes are not to be guessed.</summary>
internal sealed class SignInTries(TimeProvider clock)
{
    /// <summary>Five passphrases a minute from an address, thirty altogether.</summary>
    public Tries OfPassphrases { get; } = new(5, 30, clock);

    /// <summary>Ten codes a minute from an address, thirty altogether.</summary>
    public Tries OfCodes { get; } = new(10, 30, clock);
}
