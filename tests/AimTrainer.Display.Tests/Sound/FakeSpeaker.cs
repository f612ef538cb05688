namespace AimTrainer.Display.Tests;

/// <summary>Writes down what it is asked to say.</summary>
internal sealed class FakeSpeaker : ISpeaker
{
    public List<string> Asked { get; } = [];

    public void Say(string words, TimeSpan after) => Asked.Add($"{words} after {after.TotalMilliseconds:0} ms");

    public void Hush() => Asked.Add("hush");

    public Task FinishAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
