using Microsoft.AspNetCore.Builder;

namespace AimTrainer.Web;

/// <summary>Says on a call who may go through.</summary>
internal static class OpenToBuilding
{
    public static TBuilder OpenTo<TBuilder>(this TBuilder builder, Door door)
        where TBuilder : IEndpointConventionBuilder => builder.WithMetadata(new OpenToAttribute(door));
}
