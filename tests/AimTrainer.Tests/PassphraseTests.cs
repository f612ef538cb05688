using AimTrainer.Web;

namespace AimTrainer.Tests;

public sealed class PassphraseTests : IDisposable
{
    private const string Words = "correct horse battery staple";

    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public void Passphrase_FromAPipe_IsSetHashedAndRemoved()
    {
        Assert.Equal(0, _work.Typed($"{Words}\n", "passphrase").Code);
        Assert.True(new Passphrase(_work.Data).Matches(Words));
        Assert.False(new Passphrase(_work.Data).Matches("correct horse battery stable"));
        Assert.DoesNotContain(Words, File.ReadAllText(Path.Combine(_work.Data, "passphrase.json")), StringComparison.Ordinal);
        Assert.Equal("The passphrase is removed.\n", _work.Run("passphrase", "--remove").Out);
        Assert.Equal("There was no passphrase.\n", _work.Run("passphrase", "--remove").Out);
    }

    [Theory]
    [InlineData("short\n", "passphrase: found 5 characters; allowed: 10 to 200")]
    [InlineData("", "passphrase: found nothing; allowed: one line on the standard input")]
    public void Passphrase_CannotBe_OneLine(string input, string words)
    {
        var ran = _work.Typed(input, "passphrase");

        Assert.Equal(2, ran.Code);
        Assert.StartsWith(words, ran.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_work.Data));
    }

    [Theory]
    [InlineData("--urls http://0.0.0.0:5271", "--urls http://0.0.0.0:5271: others on the network could reach this: set a coach's passphrase first (aimtrainer passphrase")]
    [InlineData("--urls http://*:5271", "--urls http://*:5271: others on the network")]
    [InlineData("--urls http://127.0.0.1:5271;http://[::]:5271", "--urls http://127.0.0.1:5271;http://[::]:5271: others on the network")]
    [InlineData("--lines 0.0.0.0:5272", "--lines 0.0.0.0:5272: others on the network")]
    [InlineData("--urls nonsense", "--urls: found nonsense; allowed: an address such as http://127.0.0.1:5271")]
    [InlineData("--lines 70000", "--lines: found 70000; allowed: a port from 0")]
    [InlineData("--lines here", "--lines: found here; allowed: a port from 0")]
    public void Serve_BeyondThisMachineOrWrong_IsRefused(string options, string words)
    {
        var ran = _work.Run(["serve", .. options.Split(' ')]);

        Assert.Equal(2, ran.Code);
        Assert.StartsWith(words, ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Lines_ShotsComeOverTcp()
    {
        var ran = await _work.ShellAsync(
            """
            mkfifo typed; exec 3<>typed
            $AIM run --drill ten-shot-spread --lines 0 --data "$DATA" <typed >out.txt 2>&1 &
            until grep -q 'Lines are taken at' out.txt; do sleep 0.05; done
            port=$(sed -n 's/.*127.0.0.1:\([0-9]*\).*/\1/p' out.txt | head -1)
            exec 4<>/dev/tcp/127.0.0.1/$port
            for i in 1 2 3 4 5 6 7 8 9 10; do echo "{\"id\":\"s-$i\",\"arrowsBoard\":10}" >&4; read -r answer <&4; echo "$answer"; done
            wait $!; echo "ended $?"
            """);

        Assert.Equal(10, ran.Out.Split("\"answer\":\"kept\"").Length - 1);
        Assert.Contains("ended 0", ran.Out, StringComparison.Ordinal);
    }
}
