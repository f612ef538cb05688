using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using AimTrainer.Domain;
using NAudio.CoreAudioApi;
using NAudio.Wave;

namespace AimTrainer.Display;

/// <summary>Sound on Windows, through its audio sessions in shared mode.</summary>
[SupportedOSPlatform("windows")]
public sealed class WasapiSound : ISoundSystem
{
    /// <inheritdoc/>
    public SoundListing List()
    {
        try
        {
            using var devices = new MMDeviceEnumerator();
            var found = devices.EnumerateAudioEndPoints(DataFlow.Render, DeviceState.Active);
            return new SoundListing(found.Select(device => new SoundDevice(device.FriendlyName, device.DeviceFriendlyName)).ToValueList(), null);
        }
        catch (COMException exception)
        {
            return new SoundListing([], $"Windows gives no list of sound devices ({exception.Message.Trim()}): check that the Windows Audio service runs");
        }
    }

    /// <inheritdoc/>
    public SoundOpening Open(string? device, ISampleProvider samples)
    {
        WasapiPlayer? player = null;
        try
        {
            using var devices = new MMDeviceEnumerator();
            var found = device is null
                ? devices.TryGetDefaultAudioEndpoint(DataFlow.Render, Role.Multimedia, out var usual) ? usual : null
                : devices.EnumerateAudioEndPoints(DataFlow.Render, DeviceState.Active)
                    .FirstOrDefault(one => string.Equals(one.FriendlyName, device, StringComparison.OrdinalIgnoreCase));
            if (found is null)
            {
                return SoundOpening.Failed(
                    $"{(device is null ? "no sound device is set as the usual one" : $"no sound device is called \"{device}\"")}: "
                    + "name one of those that \"aimtrainer sound\" lists");
            }

            player = new WasapiPlayerBuilder().WithDevice(found).WithSharedMode().WithEventSync()
                .WithLatency((int)SoundFormat.Buffer.TotalMilliseconds).WithLowLatency(false).Build();
            player.Init(samples.ToWaveProvider());
            return SoundOpening.Of(player);
        }
        catch (Exception exception) when (exception is COMException or InvalidOperationException or NotSupportedException)
        {
            player?.Dispose();
            return SoundOpening.Failed($"the sound device cannot be opened ({exception.Message.Trim()}): check it in the system's sound settings");
        }
    }
}
