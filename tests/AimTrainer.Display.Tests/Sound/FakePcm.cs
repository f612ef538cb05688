using System.Collections.Concurrent;

namespace AimTrainer.Display.Tests;

/// <summary>A device that answers as it is told to; when it has no more answers it takes what it is given.</summary>
internal sealed class FakePcm(params int[] answers) : IPcm
{
    private readonly ConcurrentQueue<int> _answers = new(answers);

    public string Device => "fake";

    public int RecoverAnswer { get; init; }

    public ConcurrentQueue<int> Recovered { get; } = [];

    public List<byte> Taken { get; } = [];

    public bool Drained { get; private set; }

    public bool Disposed { get; private set; }

    public int Write(ReadOnlySpan<byte> frames)
    {
        var taken = _answers.TryDequeue(out var answer) ? answer : frames.Length / 4;
        if (taken > 0)
        {
            Taken.AddRange(frames[..(taken * 4)]);
        }

        return taken;
    }

    public int Recover(int error)
    {
        Recovered.Enqueue(error);
        return RecoverAnswer;
    }

    public void Drain() => Drained = true;

    public void Dispose() => Disposed = true;
}
